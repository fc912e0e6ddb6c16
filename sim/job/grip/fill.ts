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
  load.slip.set(part.mass, jaws.padStiffness)
  load.slip.staticFriction = jaws.friction.static
  load.slip.slidingFriction = jaws.friction.sliding
  fillSide(load.near, scenario)
  fillSide(load.far, scenario)
}

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
