/**
 * What limits the bandwidth of a loop, each with the crossover that it allows and the figures behind it; `sim/say` tells what
 * buying more would take. Most bounds are rules of thumb on closed forms; 'contact', 'free-air' and 'reach' are those of the sampled loop
 * itself.
 */
import type { Scenario } from '../../scenario/index.ts'
import type { LoopId, ServoLoopId } from '../model.ts'
import type { WorkingPointOptions } from '../working-point.ts'
import { type AxisFigures, axisFigures, forceSlopes } from './axis-figures.ts'
import { type ContactResonance, contactResonance, freeAir } from './contact-limits.ts'
import { DELAY_SAMPLES } from './current.ts'
import { PEAK_SENSITIVITY } from './force.ts'
import { type Reach, reachOf } from './scaled-gains.ts'

export type LimitKind =
  | 'delay'
  | 'resonance'
  | 'voltage'
  | 'encoder'
  | 'noise'
  | 'inner-loop'
  | 'speed'
  | 'contact'
  | 'free-air'
  | 'reach'

/** The figures behind each bound, in SI. */
export interface LimitFigures {
  /** Computing and holding [s], rate of the current loop [1/s]. */
  'current-delay': { delay: number; rate: number }
  /** Step of the current [A]; voltage left for it at approach speed, below 0 where there is none, and in all [V]. */
  'current-voltage': { step: number; headroom: number; bus: number }
  /** Rms of noise and steps of the measured current [A], and the winding. */
  'current-noise': { ripple: number; resistance: number; inductance: number }
  /** Sum of the lags and each of them [s]. */
  'motion-delay': { delay: number; lags: AxisFigures['lags'] }
  /** Masses on either side of the transmission [kg], their frequency [rad/s] and damping ratio. */
  resonance: { jaw: number; motor: number; omega: number; damping: number }
  'motion-voltage': { bus: number; current: number; inductance: number }
  /** Step [m], continuous current [A]. */
  encoder: { step: number; current: number }
  /** Sum of the lags and each of them [s]. */
  'force-delay': { delay: number; velocityLoop: number; hold: number; gauge: number }
  /** Crossover of the velocity loop [rad/s], rate of the servo [1/s]. */
  'inner-loop': { inner: number; rate: number }
  /** Rms of noise and steps of the gauge [N], and what is to stay quiet. */
  'force-noise': { ripple: number; quiet: 'dead band' | 'speed limit' }
  /** Speed limit [m/s], how the force on the softest part grows at it [N/s], target [N]. */
  speed: { speed: number; growth: number; target: number }
  contact: Omit<ContactResonance, 'crossover'>
  /** Gain margin in free air [dB], mass of the gauge's finger [kg]. */
  'free-air': { gainMargin: number; fingerMass: number }
  /** Peak sensitivity that is kept. */
  reach: Omit<Reach, 'crossover'> & { most: number }
}

type LimitOf<I extends keyof LimitFigures> = {
  id: I
  kind: LimitKind
  /** Crossover that it allows [rad/s]; Infinity where it sets no bound. */
  crossover: number
} & LimitFigures[I]

export type Limit = { [I in keyof LimitFigures]: LimitOf<I> }[keyof LimitFigures]

/** Phase left at the crossover by the delay bound [rad]; common practice, no source. */
const PHASE_LEFT = Math.PI / 3
/** Share of the drive that steps and noise of a measurement may stir; common practice, no source. */
const STIR = 0.05
/** Gain that a resonance may reach without regard to its phase: 6 dB of margin; common practice, no source. */
const PEAK = 0.5

/** The tightest first. */
export function limitsOf(scenario: Scenario, loop: LoopId, options: WorkingPointOptions = {}): Limit[] {
  const limits: Record<LoopId, () => Limit[]> = {
    current: () => currentLimits(scenario),
    position: () => [...motionLimits(scenario, scenario.servo.kd > 0), ...reach(scenario, 'position', options)],
    velocity: () => [...motionLimits(scenario, true), ...reach(scenario, 'velocity', options)],
    force: () => [
      ...forceLimits(scenario, options),
      ...contactLimits(scenario, options),
      ...reach(scenario, 'force', options),
    ],
  }
  return limits[loop]().sort((a, b) => a.crossover - b.crossover)
}

function currentLimits(scenario: Scenario): Limit[] {
  const { drive, servo, approach, actuator } = scenario
  const { resistance, inductance } = actuator.motor
  const { plant } = axisFigures(scenario)
  const step = servo.currentLimit
  const headroom = drive.busVoltage - plant.resistance * step - plant.forceConstant * approach.speed
  const delay = DELAY_SAMPLES / drive.currentRate
  const ripple = Math.hypot(drive.currentNoise, drive.currentResolution / Math.sqrt(12))
  return [
    {
      id: 'current-delay',
      kind: 'delay',
      crossover: (Math.PI / 2 - PHASE_LEFT) / delay,
      delay,
      rate: drive.currentRate,
    },
    {
      id: 'current-voltage',
      kind: 'voltage',
      crossover: Math.max(0, headroom) / (inductance * step),
      step,
      headroom,
      bus: drive.busVoltage,
    },
    {
      id: 'current-noise',
      kind: 'noise',
      crossover: ripple > 0 ? (STIR * drive.busVoltage) / (inductance * ripple) : Number.POSITIVE_INFINITY,
      ripple,
      resistance,
      inductance,
    },
  ]
}

function motionLimits(scenario: Scenario, differentiates: boolean): Limit[] {
  const { drive, servo, sensors, approach, actuator } = scenario
  const { inductance, continuousCurrent } = actuator.motor
  const axis = axisFigures(scenario)
  const { plant, lags, delay, acceleration } = axis
  const room = Math.max(0, drive.busVoltage - plant.forceConstant * approach.speed) / servo.currentLimit
  const weight = 1 / servo.rate / (servo.speedFilter + 1 / servo.rate)
  const step = sensors.encoder.resolution
  const kick = differentiates
    ? (STIR * continuousCurrent * acceleration) / (weight * servo.rate * step)
    : Number.POSITIVE_INFINITY
  return [
    { id: 'motion-delay', kind: 'delay', crossover: (Math.PI / 2 - PHASE_LEFT) / delay, delay, lags },
    resonance(scenario, axis),
    {
      id: 'motion-voltage',
      kind: 'voltage',
      crossover: room > plant.resistance ? Math.sqrt(room * room - plant.resistance ** 2) / inductance : 0,
      bus: drive.busVoltage,
      current: servo.currentLimit,
      inductance,
    },
    {
      id: 'encoder',
      kind: 'encoder',
      crossover: step > 0 ? kick : Number.POSITIVE_INFINITY,
      step,
      current: continuousCurrent,
    },
  ]
}

/** Jaw mass on the transmission: L at the resonance is (ω_c/ω_r)·(m/M)/(2ζ) for a loop that crosses like ω_c/s. */
function resonance({ actuator }: Scenario, { plant }: AxisFigures): Limit {
  const { stiffness, damping } = actuator.transmission
  const omega = Math.sqrt(stiffness * (1 / plant.mass + 1 / plant.jawMass))
  const ratio = (damping * omega) / (2 * stiffness)
  return {
    id: 'resonance',
    kind: 'resonance',
    crossover: (PEAK * 2 * ratio * omega) / (plant.jawMass / plant.mass),
    jaw: plant.jawMass,
    motor: plant.mass,
    omega,
    damping: ratio,
  }
}

function forceLimits(scenario: Scenario, options: WorkingPointOptions): Limit[] {
  const { servo, strategies, sensors } = scenario
  const { gauge } = sensors
  const { rate, deadband, speedLimit, target, velocity } = strategies.sensedForce
  const { acceleration } = axisFigures(scenario)
  const slopes = forceSlopes(scenario, options)
  if (!slopes) return []
  const { softest, stiffest } = slopes
  const inner = velocity.kp * acceleration
  const delay = 1 / inner + 0.5 / rate + 1 / gauge.bandwidth
  const ripple = Math.hypot(gauge.noise, gauge.resolution / Math.sqrt(12))
  const quiet = deadband > 0 ? deadband / 3 : STIR * speedLimit
  return [
    {
      id: 'force-delay',
      kind: 'delay',
      crossover: (Math.PI / 2 - PHASE_LEFT) / delay,
      delay,
      velocityLoop: 1 / inner,
      hold: 0.5 / rate,
      gauge: 1 / gauge.bandwidth,
    },
    { id: 'inner-loop', kind: 'inner-loop', crossover: inner / 3, inner, rate: servo.rate },
    {
      id: 'force-noise',
      kind: 'noise',
      crossover: ripple > 0 ? (stiffest * quiet) / ripple : Number.POSITIVE_INFINITY,
      ripple,
      quiet: deadband > 0 ? 'dead band' : 'speed limit',
    },
    {
      id: 'speed',
      kind: 'speed',
      crossover: (softest * speedLimit) / target,
      speed: speedLimit,
      growth: softest * speedLimit,
      target,
    },
  ]
}

function contactLimits(scenario: Scenario, options: WorkingPointOptions): Limit[] {
  if (!forceSlopes(scenario, options)) return []
  const contact = contactResonance(scenario, options, PEAK)
  const free = freeAir(scenario, options, PEAK)
  return [
    ...(contact ? [{ id: 'contact' as const, kind: 'contact' as const, ...contact }] : []),
    ...(free ? [{ id: 'free-air' as const, kind: 'free-air' as const, ...free }] : []),
  ]
}

function reach(scenario: Scenario, loop: ServoLoopId, options: WorkingPointOptions): Limit[] {
  const found = reachOf(scenario, loop, PEAK_SENSITIVITY, options)
  return found ? [{ id: 'reach', kind: 'reach', most: PEAK_SENSITIVITY, ...found }] : []
}
