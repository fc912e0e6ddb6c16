/** The compiled half of the registry of jobs: `index.ts` lists what is said of each. */
import type { Load } from '../axis/load.ts'
import { FreeLoad } from './free.ts'
import { GripLoad } from './grip/load.ts'

export enum LoadId {
  grip,
  free,
}

export function loadOf(id: LoadId): Load {
  if (id === LoadId.free) return new FreeLoad()
  return new GripLoad()
}
