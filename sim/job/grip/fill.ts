/** The constants of a grip, from its part of the scenario. */
import type { Output } from '../../axis/fill.ts'
import { axisOf } from '../../axis/reflect.ts'
import type { Scenario } from '../../scenario/index.ts'
import { liftTime } from '../../scenario/lift.ts'
import type { Side } from './contact/side.ts'
import { contactsOf, gyrationOf, jawMassOf, padRadiusOf, travelToContact } from './geometry.ts'
import type { GripLoad } from './load.ts'

export function fillGrip(load: GripLoad, scenario: Scenario): void {
  const { jaws, part } = scenario
  load.mirrored = jaws.layout === 'mirrored' ? 1 : 0
  load.gap = travelToContact(scenario)
  load.partMass = part.mass
  load.backMass = backMass(scenario)
  load.crackForce = part.crackForce ?? Infinity
  load.markForce = part.markForce ?? Infinity
  load.dentForce = part.yieldForce ?? Infinity
  load.padLength = jaws.padLength
  load.loadExponent = jaws.friction.loadExponent
  load.referenceForce = jaws.friction.referenceForce
  load.liftTime = liftTime(scenario)
  load.depth = part.width / contactsOf(scenario)
  load.slip.set(part.mass, gyrationOf(part), jaws.padStiffness)
  load.slip.gripAt(-part.centre.up, part.centre.across, padLever(jaws))
  load.slip.staticFriction = jaws.friction.static
  load.slip.slidingFriction = jaws.friction.sliding
  fillSide(load.near, scenario)
  fillSide(load.far, scenario)
}

/**
 * Mass that the arm's motion along the grip drives back through a yielding axis [kg]: 0 where two jaws balance each other, and where a
 * thread holds itself.
 */
export function backMass(scenario: Scenario): number {
  const { linearMass, lower } = axisOf(scenario.actuator)
  return scenario.jaws.layout === 'anvil' && lower < 1 ? jawMassOf(scenario) + linearMass : 0
}

/** Friction torque of a disc under even pressure over friction force times its radius (Howe and Cutkosky 1996). */
export const EVEN_PRESSURE = 2 / 3

/** Radius r of the limit surface of a pad [m]. */
export const padLever = (jaws: Scenario['jaws']) => EVEN_PRESSURE * padRadiusOf(jaws)

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
