/** What every strategy without a gauge shares: a profile into the part, followed by the position loop. */
import { FieldLoop } from '../control/field-loop.ts'
import { PositionPid } from '../control/position-pid.ts'
import { contactsOf, travelToContact } from '../plant/axis.ts'
import { isOpenLoop } from '../plant/commutation.ts'
import type { Scenario } from '../scenario/index.ts'
import { AT_REST, Course, type Start } from './course.ts'

/** Profile of one jaw to `overtravel` beyond first touch of the nominal part, but not past its stroke. */
export function approachProfile(scenario: Scenario, start: Start = AT_REST): Course {
  const { approach, jaws, part } = scenario
  const creeps = approach.creepFrom > part.width
  const way = {
    end: Math.min(travelToContact(scenario) + approach.overtravel, jaws.stroke),
    speed: approach.speed,
    acceleration: approach.acceleration,
    jerk: approach.jerk,
    creepSpeed: approach.creepSpeed,
    creepFrom: creeps
      ? Math.max(0, (jaws.opening - approach.creepFrom) / contactsOf(scenario))
      : Number.POSITIVE_INFINITY,
  }
  return new Course(way, start)
}

/** Current with which a clamp presses [A]. */
export const clampLimit = ({ servo, strategies }: Scenario) =>
  Math.min(strategies.currentClamp.limit, servo.currentLimit)

/** Position loop of the servo with its output limited to `limit` [A]; for a step motor in open loop, its field. */
export function positionLoop(scenario: Scenario, limit: number): PositionPid | FieldLoop {
  const { servo } = scenario
  if (isOpenLoop(scenario)) return new FieldLoop(limit)
  return new PositionPid({ ...servo, period: 1 / servo.rate, limit })
}

/** What one position loop holds goes on in another one. */
export function handOver(from: PositionPid | FieldLoop, to: PositionPid | FieldLoop): void {
  if (from instanceof PositionPid && to instanceof PositionPid) to.take(from)
}
