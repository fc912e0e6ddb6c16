/** What follows in each job's own groups where a quantity varies on which another one depends. */
import type { JobId, Scenario } from './schema/index.ts'
import type { PressGroups } from './schema/press/index.ts'
import type { WebGroups } from './schema/web/index.ts'

/** `changed` says whether a group is the scenario's own copy: no other may be written to. */
type Follow = (scenario: Scenario, changed: (group: object) => boolean) => void

export const FOLLOWS: Record<JobId, Follow> = {
  grip(scenario, changed) {
    const friction: { static: number; sliding: number } = scenario.jaws.friction
    if (changed(friction)) friction.sliding = Math.min(friction.sliding, friction.static)
  },
  press(scenario, changed) {
    const friction: { static: number; pressing: number } = (scenario as unknown as PressGroups).joint.friction
    if (changed(friction)) friction.static = Math.max(friction.static, friction.pressing)
  },
  cap() {},
  web(scenario, changed) {
    const idlers: { coulomb: number; breakaway: number } = (scenario as unknown as WebGroups).idlers
    if (changed(idlers)) idlers.breakaway = Math.max(idlers.breakaway, idlers.coulomb)
  },
}
