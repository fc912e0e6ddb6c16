/** The constants of a grip, from its part of the scenario. */
import type { Output } from '../../axis/fill.ts'
import type { Scenario } from '../../scenario/index.ts'
import { liftTime } from '../../scenario/lift.ts'
import type { Side } from './contact/side.ts'
import { contactsOf, jawMassOf, travelToContact } from './geometry.ts'
import type { GripLoad } from './load.ts'

export function fillGrip(load: GripLoad, scenario: Scenario): void {
  const { jaws, part } = scenario
  load.mirrored = jaws.layout === 'mirrored' ? 1 : 0
  load.gap = travelToContact(scenario)
  load.partMass = part.mass
  load.crackForce = part.crackForce ?? Infinity
  load.markForce = part.markForce ?? Infinity
  load.dentForce = part.yieldForce ?? Infinity
  load.padLength = jaws.padLength
  load.loadExponent = jaws.friction.loadExponent
  load.referenceForce = jaws.friction.referenceForce
  load.liftTime = liftTime(scenario)
  load.depth = part.width / contactsOf(scenario)
  load.slip.set(part.mass, part.gyration ?? part.width / Math.sqrt(8), jaws.padStiffness)
  load.slip.below = -part.centre.up
  load.slip.beside = part.centre.across
  load.slip.radius = padLever(jaws)
  load.slip.staticFriction = jaws.friction.static
  load.slip.slidingFriction = jaws.friction.sliding
  fillSide(load.near, scenario)
  fillSide(load.far, scenario)
}

/** Radius r of the limit surface of a pad [m]: 2/3 of its own under even pressure (Howe and Cutkosky 1996). */
export const padLever = ({ padRadius, padLength }: Scenario['jaws']) => (2 / 3) * (padRadius ?? padLength / 2)

export function fillSide(side: Side, { jaws, part }: Pick<Scenario, 'jaws' | 'part'>): void {
  side.exponent = part.exponent
  side.wholeStiffness = part.stiffness
  side.pad = jaws.padStiffness
  side.damping = 2 * part.damping
  side.share = part.relaxation.fraction
  side.relaxationTime = part.relaxation.time
  side.wholeYield = part.yieldForce ?? Infinity
}

/** The jaws as the axis' output. */
export function gripOutput(scenario: Scenario): Output {
  const { jaws } = scenario
  return {
    mass: jawMassOf(scenario),
    stroke: jaws.stroke,
    reach: Math.min(jaws.stroke, jaws.opening / contactsOf(scenario)),
  }
}
