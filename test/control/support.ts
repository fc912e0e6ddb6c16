/** Control blocks made from options by name, as the tests like them. */
import { CurrentLoop } from '../../sim/control/current-loop.ts'
import { FilteredDerivative, LowPass } from '../../sim/control/filters.ts'
import { ForcePid } from '../../sim/control/force-pid.ts'
import { PositionPid } from '../../sim/control/position-pid.ts'
import { Profile, type SCurve, sCurve } from '../../sim/control/profile.ts'
import { VelocityPi } from '../../sim/control/velocity-pi.ts'

export interface PiOptions {
  kp: number
  ki: number
  period: number
  limit: number
}

export interface PositionPidOptions extends PiOptions {
  kd: number
  speedFilter: number
  velocityFeedforward: number
  accelerationFeedforward: number
  weights?: { proportional: number; derivative: number }
}

export function positionPid({ kp, ki, period, speedFilter, weights, ...rest }: PositionPidOptions): PositionPid {
  const pid = Object.assign(new PositionPid(), rest)
  pid.leftOut = kp * (1 - (weights?.proportional ?? 1))
  pid.derivativeWeight = weights?.derivative ?? 1
  pid.setPi(kp, ki, period)
  pid.slope.set(speedFilter, period)
  return pid
}

export function velocityPi({ kp, ki, period, limit }: PiOptions): VelocityPi {
  const pi = Object.assign(new VelocityPi(), { limit })
  pi.setPi(kp, ki, period)
  return pi
}

export function forcePid(options: PiOptions & { kd: number; derivativeFilter: number }): ForcePid {
  const { kp, ki, period, derivativeFilter, ...rest } = options
  const pid = Object.assign(new ForcePid(), rest)
  pid.setPi(kp, ki, period)
  pid.slope.set(derivativeFilter, period)
  return pid
}

/** `kp` and `ki` of a winding without resistance or inductance of its own: they are set as they are. */
export function currentLoop(options: {
  kp: number
  ki: number
  period: number
  voltageLimit: number
  backEmf: number
}): CurrentLoop {
  const { kp, ki, period, ...rest } = options
  const loop = Object.assign(new CurrentLoop(), rest)
  loop.set(ki, kp, 1, period) // kp = L·ωc and ki = R·ωc
  return loop
}

export function lowPassOf({ timeConstant, period }: { timeConstant: number; period: number }): LowPass {
  const filter = new LowPass()
  filter.set(timeConstant, period)
  return filter
}

export function derivativeOf({ timeConstant, period }: { timeConstant: number; period: number }): FilteredDerivative {
  const made = new FilteredDerivative()
  made.set(timeConstant, period)
  return made
}

export interface ProfileOptions {
  distance: number
  speed: number
  acceleration: number
  jerk: number
  creepSpeed?: number | undefined
  creepFrom?: number | undefined
}

export function profileOf(options: ProfileOptions): Profile {
  const { distance, speed, acceleration, jerk, creepSpeed = speed, creepFrom = Number.POSITIVE_INFINITY } = options
  const made = new Profile()
  made.plan(distance, speed, acceleration, jerk, creepSpeed, creepFrom)
  return made
}

/** A move from one speed to another. */
export const sCurveOf = (move: {
  distance: number
  v0: number
  v1: number
  speed: number
  acceleration: number
  jerk: number
}): SCurve => sCurve(move.distance, move.v0, move.v1, move.speed, move.acceleration, move.jerk)
