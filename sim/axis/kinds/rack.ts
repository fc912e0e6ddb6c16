/**
 * Motor, gear and rack. A gear loses a fixed share of the load it carries, in both directions: efficiency η forward
 * and 2 − 1/η backward (Niemann and Winter, Maschinenelemente, self-locking of gears; from memory).
 */
import type { Actuator } from '../../scenario/index.ts'
import { LOAD_REACH } from '../flanks.ts'
import type { Reflected } from '../reflect.ts'

export function rackAxis({ motor, transmission }: Extract<Actuator, { kind: 'rack' }>): Reflected {
  const c = transmission.pinionRadius / transmission.gearRatio
  const loss = 1 / transmission.efficiency - 1
  return {
    mass: motor.inertia / (c * c) + transmission.carriageMass,
    linearMass: transmission.carriageMass,
    forcePerAmpere: motor.torqueConstant / c,
    raise: loss,
    lower: loss,
    loadReach: LOAD_REACH,
    coggingForce: motor.cogging.amplitude / c,
    coggingPeriod: motor.cogging.period * c,
    ripplePeriod: motor.ripple.period * c,
    cyclePitch: (6.283185307179586 * c * 4) / motor.fullSteps,
  }
}
