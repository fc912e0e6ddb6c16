/** What strategies have in common that work with the position loop of the servo. */
import { jobOf } from '../job/index.ts'
import type { Edit, Scenario } from '../scenario/index.ts'
import type { AxisFacts, Ground, OwnCauses, SearchKeys } from './strategy.ts'

export const POSITION_SEARCH: Pick<SearchKeys, 'gains' | 'rate'> = {
  gains: ['servo.kp', 'servo.ki', 'servo.kd'],
  rate: null,
}

/** A profile that never ends before the part [m], and where the output turns [rad]. */
const FAR = 0.5
const FAR_TURNED = 100

export const farOf = (scenario: Pick<Scenario, 'job'>) => (jobOf(scenario).output.travel === 'rad' ? FAR_TURNED : FAR)

export const POSITION_CAUSES: OwnCauses = {
  detection: () => [],
  windup: () => [set('servo.ki', 0)],
  stopping: () => [],
  travel: (scenario) => [set('approach.overtravel', farOf(scenario))],
  deadband: () => [],
}

export const set = (path: string, value: unknown): Edit => ({ path, value })

/** Whether a current tells the force, beside what friction hides of it. */
export const readable = ({ share, readable }: AxisFacts): Ground => ({ kind: readable ? 'readable' : 'hidden', share })
