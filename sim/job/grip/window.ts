/** The force window: the least grip force that holds and the most that the part takes [N at one contact]. */
import { GRAVITY } from '../../axis/arm.ts'
import { armOf } from '../../axis/fill-arm.ts'
import type { ArmMove, Scenario } from '../../scenario/index.ts'
import { liftTime } from '../../scenario/lift.ts'
import { backMass, padLever } from './fill.ts'
import { heldStiffly, heldYielding, holdingForce, pullOnPads } from './holding.ts'

export interface ForceWindow {
  /** What holds whether the axis keeps its place or not. Null: nothing pulls on the part. */
  least: number | null
  /** Whether `least` is so high because the axis may yield, as it does at its current limit; and what holds if it does not. */
  yields: boolean
  leastStiff: number | null
  /** Null: the part has no damage limit. */
  most: number | null
}

/**
 * Force needed at one contact under a pull [m/s²] across and along the grip, friction of two contacts and none of them lost, where the
 * axis keeps its place.
 */
export function neededForce({ part, jaws }: Scenario, across: number, along: number): number {
  return heldStiffly(heldBy(jaws.friction, part.mass * across), part.mass, along)
}

/** The same, as the jaws close, where an axis that can be driven back yields to the arm. */
export function neededYielding(scenario: Scenario, across: number, along: number): number {
  const { part, jaws, arm } = scenario
  const back = backMass(scenario)
  if (back === 0) return neededForce(scenario, across, along)
  const rest = arm.gravity === 'along' ? GRAVITY : 0
  return heldYielding(heldBy(jaws.friction, part.mass * across), part.mass, back, along, rest)
}

/** What pulls on the pads for each kilogram [m/s²], turning included. */
const padPull = ({ part, jaws }: Scenario, down: number, side: number) =>
  pullOnPads(down, side, -part.centre.up, part.centre.across, padLever(jaws))

/** Force at one contact [N] whose friction carries its share of `load` [N] across the grip. */
export const heldBy = (friction: Scenario['jaws']['friction'], load: number) =>
  holdingForce(friction.static, friction.loadExponent, friction.referenceForce, load)

export function forceWindow(scenario: Scenario): ForceWindow {
  const arm = armOf(scenario.arm)
  let least = 0
  let stiff = 0
  // Released, the part stands on its support again.
  const until = Math.min(scenario.run.duration, scenario.events.release?.time ?? Infinity)
  // The pull is linear between the corners of the moves, so its size is greatest at one of them.
  for (const time of [liftTime(scenario), until, ...scenario.arm.moves.flatMap(corners)]) {
    if (time < liftTime(scenario) || time > until) continue
    arm.at(time)
    const { along, down, side } = arm.state
    const across = padPull(scenario, down, side)
    least = Math.max(least, neededYielding(scenario, across, along))
    stiff = Math.max(stiff, neededForce(scenario, across, along))
  }
  const most = damageLimit(scenario)
  return {
    least: least > 0 ? least : null,
    yields: least > stiff,
    leastStiff: stiff > 0 ? stiff : null,
    most: most < Number.POSITIVE_INFINITY ? most : null,
  }
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
