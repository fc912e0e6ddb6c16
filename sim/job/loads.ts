/** The compiled half of the registry of jobs: `index.ts` lists what is said of each. */
import type { Load } from '../axis/load.ts'
import { CapLoad } from './cap/load.ts'
import { FreeLoad } from './free.ts'
import { GripLoad } from './grip/load.ts'
import { LoadId } from './load-id.ts'
import { PressLoad } from './press/load.ts'
import { WebLoad } from './web/load.ts'

export function loadOf(id: LoadId): Load {
  if (id === LoadId.free) return new FreeLoad()
  if (id === LoadId.press) return new PressLoad()
  if (id === LoadId.cap) return new CapLoad()
  if (id === LoadId.web) return new WebLoad()
  return new GripLoad()
}
