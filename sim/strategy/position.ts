/** What strategies have in common that work with the position loop of the servo. */
import type { Edit } from '../scenario/index.ts'
import type { AxisFacts, Ground, OwnCauses, SearchKeys } from './strategy.ts'

export const POSITION_SEARCH: Pick<SearchKeys, 'gains' | 'rate'> = {
  gains: ['servo.kp', 'servo.ki', 'servo.kd'],
  rate: null,
}

/** Range end of the schema: a profile that never ends before the part [m]. */
export const FAR = 0.5

export const POSITION_CAUSES: OwnCauses = {
  detection: () => [],
  windup: () => [set('servo.ki', 0)],
  stopping: () => [],
  travel: () => [set('approach.overtravel', FAR)],
  deadband: () => [],
}

export const set = (path: string, value: unknown): Edit => ({ path, value })

/** Whether a current tells the force, beside what friction hides of it. */
export const readable = ({ share, readable }: AxisFacts): Ground => ({ kind: readable ? 'readable' : 'hidden', share })
