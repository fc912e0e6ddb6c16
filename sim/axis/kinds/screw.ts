/**
 * Motor and screw. Raising and lowering torques of a power screw without collar (Budynas and Nisbett, Shigley's
 * Mechanical Engineering Design, 9th ed., eq. 8-1, 8-2 and 8-5), written as a friction that grows with the load on top of
 * the lossless F·lead/2π.
 */

import { cosine } from '../../core/elementary.ts'
import type { Actuator } from '../../scenario/index.ts'
import { LOAD_REACH } from '../flanks.ts'
import type { Reflected } from '../reflect.ts'

const TWO_PI = 6.283185307179586
const { PI } = Math

interface Thread {
  /** [m], [m], coefficient, half-angle [rad] */
  lead: number
  pitchDiameter: number
  threadFriction: number
  flankAngle: number
}

/** Torque for each newton of load while moving against it [N·m/N]. */
export function raiseTorque({ lead, pitchDiameter: d, threadFriction, flankAngle }: Thread): number {
  const f = threadFriction / cosine(flankAngle)
  return ((d / 2) * (lead + PI * f * d)) / (PI * d - f * lead)
}

/** Torque for each newton of load while moving with it [N·m/N]; negative where the load drives the screw back. */
export function lowerTorque({ lead, pitchDiameter: d, threadFriction, flankAngle }: Thread): number {
  const f = threadFriction / cosine(flankAngle)
  return ((d / 2) * (PI * f * d - lead)) / (PI * d + f * lead)
}

export function screwAxis({ motor, transmission }: Extract<Actuator, { kind: 'screw' }>): Reflected {
  const c = transmission.lead / TWO_PI
  return {
    mass: motor.inertia / (c * c) + transmission.carriageMass,
    linearMass: transmission.carriageMass,
    forcePerAmpere: motor.torqueConstant / c,
    raise: raiseTorque(transmission) / c - 1,
    lower: 1 + lowerTorque(transmission) / c,
    loadReach: LOAD_REACH,
    coggingForce: motor.cogging.amplitude / c,
    coggingPeriod: motor.cogging.period * c,
    ripplePeriod: motor.ripple.period * c,
    cyclePitch: (TWO_PI * c * 4) / motor.fullSteps,
  }
}
