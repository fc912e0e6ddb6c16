/** The compiled half of the registry of jobs: `index.ts` lists what is said of each. */
import type { Load } from '../axis/load.ts'
import { GripLoad } from './grip/load.ts'

export enum LoadId {
  grip,
}

export function loadOf(_id: LoadId): Load {
  return new GripLoad()
}
