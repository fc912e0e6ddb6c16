/** The force window: the least grip force that holds and the most that the part takes [N at one contact]. */
import { armOf } from '../../axis/fill.ts'
import type { ArmMove, Scenario } from '../../scenario/index.ts'
import { liftTime } from '../../scenario/lift.ts'
import { holdingForce } from './holding.ts'

export interface ForceWindow {
  /** Null: nothing pulls on the part. */
  least: number | null
  /** Null: the part has no damage limit. */
  most: number | null
}

/** Force needed at one contact under a pull [m/s²] across and along the grip: friction of two contacts, and no contact lost. */
export function neededForce(scenario: Scenario, across: number, along: number): number {
  const { part, jaws } = scenario
  return Math.max(heldBy(jaws.friction, part.mass * across), (part.mass * Math.abs(along)) / 2)
}

/** Force at one contact [N] whose friction carries its share of `load` [N] across the grip. */
export const heldBy = (friction: Scenario['jaws']['friction'], load: number) =>
  holdingForce(friction.static, friction.loadExponent, friction.referenceForce, load)

export function forceWindow(scenario: Scenario): ForceWindow {
  const arm = armOf(scenario.arm)
  let least = 0
  // The pull is linear between the corners of the moves, so its size is greatest at one of them.
  for (const time of [liftTime(scenario), ...scenario.arm.moves.flatMap(corners)]) {
    if (time < liftTime(scenario) || time > scenario.run.duration) continue
    arm.at(time)
    const { along, down, side } = arm.state
    least = Math.max(least, neededForce(scenario, Math.sqrt(down * down + side * side), along))
  }
  const most = damageLimit(scenario)
  return { least: least > 0 ? least : null, most: most < Number.POSITIVE_INFINITY ? most : null }
}

/** Least of the part's damage limits [N], Infinity if it has none. */
export function damageLimit({ part }: Scenario): number {
  return Math.min(
    part.markForce ?? Number.POSITIVE_INFINITY,
    part.yieldForce ?? Number.POSITIVE_INFINITY,
    part.crackForce ?? Number.POSITIVE_INFINITY,
  )
}

function corners(move: ArmMove): number[] {
  const half = move.duration / 2
  const rise = Math.min(Math.abs(move.acceleration) / move.jerk, half / 2)
  return [rise, half - rise, half, half + rise, move.duration - rise].map((t) => move.start + t)
}
