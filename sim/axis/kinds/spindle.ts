/**
 * A motor that turns the output, alone or through a gear of ratio n: all in radians and newton metres of the output, so the rotor counts
 * n²-fold (closed form: its energy is J·(n·ω)²/2). A gear loses a fixed share of the load it carries, in both directions: efficiency η
 * forward and 2 − 1/η backward, as in a rack (`rack.ts`).
 */
import type { Actuator } from '../../scenario/index.ts'
import type { Reflected } from '../reflect.ts'

/** Angle of the spindle before loaded flanks slide [rad]: some 2 µm on a pitch radius of 20 mm; common practice, no source. */
export const LOAD_REACH_ANGLE = 1e-4

export function spindleAxis({ motor, transmission }: Extract<Actuator, { kind: 'spindle' }>): Reflected {
  const { gearRatio: n, efficiency, inertia } = transmission
  const loss = 1 / efficiency - 1
  return {
    mass: motor.inertia * n * n + inertia,
    linearMass: 0,
    forcePerAmpere: motor.torqueConstant * n,
    raise: loss,
    lower: loss,
    loadReach: LOAD_REACH_ANGLE,
    coggingForce: motor.cogging.amplitude * n,
    coggingPeriod: motor.cogging.period / n,
    ripplePeriod: motor.ripple.period / n,
    cyclePitch: (6.283185307179586 / n) * (4 / motor.fullSteps),
  }
}
