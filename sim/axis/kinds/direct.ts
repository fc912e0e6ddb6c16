/** Linear motor or voice coil: the motor force acts on the jaw as it is. */
import type { Actuator } from '../../scenario/index.ts'
import { LOAD_REACH } from '../flanks.ts'
import type { Reflected } from '../reflect.ts'

export function directAxis({ motor, transmission }: Extract<Actuator, { kind: 'direct' }>): Reflected {
  const mass = motor.movingMass + transmission.carriageMass
  return {
    mass,
    linearMass: mass,
    forcePerAmpere: motor.forceConstant,
    raise: 0,
    lower: 0,
    loadReach: LOAD_REACH,
    coggingForce: motor.cogging.amplitude,
    coggingPeriod: motor.cogging.period,
    ripplePeriod: motor.ripple.period,
    cyclePitch: Number.POSITIVE_INFINITY,
  }
}
