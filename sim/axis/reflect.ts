/**
 * An actuator seen from its output: everything a kind of actuator has to say to the simulation, reflected to the output's
 * coordinate (`c` in m/rad, `M = J/c² + carriage`, force `Kt i / c`). Units are those of an output that travels; for one that turns
 * read radians for metres, newton metres for newtons and kg·m² for kilograms. A new kind is one file and one line in KINDS.
 */
import type { Actuator, ActuatorKind } from '../scenario/index.ts'
import { directAxis } from './kinds/direct.ts'
import { rackAxis } from './kinds/rack.ts'
import { screwAxis } from './kinds/screw.ts'
import { spindleAxis } from './kinds/spindle.ts'

export interface Reflected {
  /** Reflected moving mass on the motor side of the transmission stiffness [kg]. */
  mass: number
  /** The share of it that moves with the output in a straight line and so feels the arm's acceleration [kg]. */
  linearMass: number
  /** Motor force at the output for each ampere [N/A], and back-EMF for each m/s of its speed [V·s/m]. */
  forcePerAmpere: number
  /** Friction in newtons for each newton of load, moving against the load and with it. */
  raise: number
  lower: number
  /** Travel before loaded flanks slide [m]. */
  loadReach: number
  /** Cogging at the output: amplitude [N] and period [m]. */
  coggingForce: number
  coggingPeriod: number
  /** Travel from one ripple of the force constant to the next, and for one electrical cycle of a step motor [m]. */
  ripplePeriod: number
  cyclePitch: number
}

type Kinds = { [K in ActuatorKind]: (actuator: Extract<Actuator, { kind: K }>) => Reflected }

const KINDS: Kinds = { screw: screwAxis, rack: rackAxis, direct: directAxis, spindle: spindleAxis }

export const axisOf = (actuator: Actuator): Reflected => (KINDS[actuator.kind] as (a: Actuator) => Reflected)(actuator)

/** A step motor without an encoder: the field follows the command and the rotor follows the field. */
export const isOpenLoop = ({ actuator }: { actuator: Actuator }) =>
  (actuator.kind === 'screw' || actuator.kind === 'spindle') && actuator.motor.openLoop
