/**
 * An actuator seen from the jaw: everything a kind of actuator has to say to the simulation, reflected to the jaw
 * coordinate (design: reflection `c` in m/rad, `M = J/c² + carriage`, force `Kt i / c`). A new kind is one file and one
 * line in AXES.
 */
import type { Actuator, ActuatorKind, Scenario } from '../scenario/index.ts'
import { directAxis } from './direct.ts'
import { rackAxis } from './rack.ts'
import { screwAxis } from './screw.ts'

export interface Axis {
  /** Reflected moving mass on the motor side of the transmission stiffness [kg]. */
  mass: number
  /** The share of it that moves with the jaw in a straight line and so feels the arm's acceleration [kg]. */
  linearMass: number
  /** Motor force at the jaw for each ampere [N/A], and back-EMF for each m/s of jaw speed [V·s/m]. */
  forceConstant: number
  /** Friction in newtons for each newton of load, moving against the load and with it. */
  raise: number
  lower: number
  /** Cogging at the jaw: amplitude [N] and period [m]. */
  coggingForce: number
  coggingPeriod: number
  /** Travel of the jaw from one ripple of the force constant to the next, and for one electrical cycle of a step motor [m]. */
  ripplePeriod: number
  cyclePitch: number
}

type Kinds = { [K in ActuatorKind]: (actuator: Extract<Actuator, { kind: K }>) => Axis }

const AXES: Kinds = { screw: screwAxis, rack: rackAxis, direct: directAxis }

export const axisOf = (actuator: Actuator): Axis => (AXES[actuator.kind] as (a: Actuator) => Axis)(actuator)

/** Contacts whose force the drive carries: both of a mirrored pair, one against an anvil. */
export const contactsOf = (scenario: Scenario) => (scenario.jaws.layout === 'mirrored' ? 2 : 1)

/** Mass of the driven jaws [kg]. */
export const jawMassOf = (scenario: Scenario) => contactsOf(scenario) * scenario.jaws.mass

/** Travel of a jaw from the open position to first touch of the nominal part [m]. */
export const travelToContact = (scenario: Scenario) =>
  (scenario.jaws.opening - scenario.part.width) / contactsOf(scenario)
