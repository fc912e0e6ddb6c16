/**
 * What limits the bandwidth of a loop, each with the crossover that it allows and what buying more would take. The bounds are
 * rules of thumb on closed forms; the analysis of the loop itself has the last word.
 */
import type { Scenario } from '../../scenario/index.ts'
import type { LoopId } from '../model.ts'
import { type LoopWording, rounded, SI_LOOP_WORDING } from '../wording.ts'
import type { WorkingPointOptions } from '../working-point.ts'
import { type AxisFigures, axisFigures, forceSlopes } from './axis-figures.ts'
import { DELAY_SAMPLES } from './current.ts'

export type LimitKind = 'delay' | 'resonance' | 'voltage' | 'encoder' | 'noise' | 'inner-loop' | 'speed'

export interface Limit {
  kind: LimitKind
  /** Crossover that it allows [rad/s]; Infinity where it sets no bound. */
  crossover: number
  /** Where the bound comes from, with figures. */
  because: string
  /** What more bandwidth would take. */
  remedy: string
}

/** Phase left at the crossover by the delay bound [rad]; common practice, no source. */
const PHASE_LEFT = Math.PI / 3
/** Share of the drive that steps and noise of a measurement may stir; common practice, no source. */
const STIR = 0.05
/** Gain that a resonance may reach without regard to its phase: 6 dB of margin; common practice, no source. */
const PEAK = 0.5

const ms = (time: number) => `${rounded(time * 1e3)} ms`
const rads = (omega: number) => `${rounded(omega)} rad/s`

export interface LimitOptions extends WorkingPointOptions {
  /** Units of the reasons; SI if left out. */
  words?: LoopWording | undefined
}

/** The tightest first. */
export function limitsOf(scenario: Scenario, loop: LoopId, options: LimitOptions = {}): Limit[] {
  const { words = SI_LOOP_WORDING } = options
  const limits: Record<LoopId, () => Limit[]> = {
    current: () => currentLimits(scenario),
    position: () => motionLimits(scenario, scenario.servo.kd > 0, words),
    velocity: () => motionLimits(scenario, true, words),
    force: () => forceLimits(scenario, options, words),
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
      kind: 'delay',
      crossover: (Math.PI / 2 - PHASE_LEFT) / delay,
      because: `Computing and holding take 1.5 samples, ${ms(delay)}; 60° of phase are to be left.`,
      remedy: `Twice the current loop rate, ${rounded(2 * drive.currentRate)} 1/s, doubles it.`,
    },
    {
      kind: 'voltage',
      crossover: Math.max(0, headroom) / (inductance * step),
      because: `A step to ${rounded(step)} A asks for L·ω·ΔI at once; at approach speed ${rounded(Math.max(0, headroom))} V of ${rounded(drive.busVoltage)} V are left for it.`,
      remedy: `Twice as much takes ${rounded(2 * Math.max(0, headroom) + drive.busVoltage - headroom)} V, or a winding of half the inductance.`,
    },
    {
      kind: 'noise',
      crossover: ripple > 0 ? (STIR * drive.busVoltage) / (inductance * ripple) : Number.POSITIVE_INFINITY,
      because: `Noise and steps of the measured current, ${rounded(ripple * 1e3)} mA rms, come out as L·ω times that; 5 % of the bus voltage are allowed. Winding ${rounded(resistance)} Ω, ${rounded(inductance * 1e3)} mH.`,
      remedy: 'Half the noise of the current measurement doubles it.',
    },
  ]
}

function motionLimits(scenario: Scenario, differentiates: boolean, words: LoopWording): Limit[] {
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
  const parts = `current loop ${ms(lags.currentLoop)}, hold ${ms(lags.hold)}, difference ${ms(lags.difference)}, speed filter ${ms(lags.filter)}`
  const largest = Object.entries({
    'a faster current loop': lags.currentLoop,
    'a higher servo rate': lags.hold + lags.difference,
    'a shorter speed filter': lags.filter,
  }).reduce((a, b) => (b[1] > a[1] ? b : a))
  return [
    {
      kind: 'delay',
      crossover: (Math.PI / 2 - PHASE_LEFT) / delay,
      because: `The lags add up to ${ms(delay)}: ${parts}; they may take 30° at the crossover.`,
      remedy: `The largest share goes with ${largest[0]}: ${ms(largest[1])}.`,
    },
    resonance(scenario, axis, words),
    {
      kind: 'voltage',
      crossover: room > plant.resistance ? Math.sqrt(room * room - plant.resistance ** 2) / inductance : 0,
      because: `Above it ${rounded(drive.busVoltage)} V do not drive a sine of the full ${rounded(servo.currentLimit)} A through ${rounded(inductance * 1e3)} mH; small signals are not bound by it.`,
      remedy: `Twice the voltage, ${rounded(2 * drive.busVoltage)} V, or half the current limit about doubles it.`,
    },
    {
      kind: 'encoder',
      crossover: step > 0 ? kick : Number.POSITIVE_INFINITY,
      because: `One encoder step of ${words.length(step)} kicks the current by k_d·Δx/T through the filter; 5 % of the continuous ${rounded(continuousCurrent)} A are allowed.`,
      remedy: `Twice as much takes an encoder of ${words.length(step / 2)}, or a longer speed filter, which costs delay.`,
    },
  ]
}

/** Jaw mass on the transmission: L at the resonance is (ω_c/ω_r)·(m/M)/(2ζ) for a loop that crosses like ω_c/s. */
function resonance({ actuator }: Scenario, { plant }: AxisFigures, words: LoopWording): Limit {
  const { stiffness, damping } = actuator.transmission
  const omega = Math.sqrt(stiffness * (1 / plant.mass + 1 / plant.jawMass))
  const zeta = (damping * omega) / (2 * stiffness)
  const share = plant.jawMass / plant.mass
  return {
    kind: 'resonance',
    crossover: (PEAK * 2 * zeta * omega) / share,
    because: `The jaw of ${words.mass(plant.jawMass)} swings against the motor side of ${words.mass(plant.mass)} at ${rads(omega)} (${rounded(omega / (2 * Math.PI))} Hz) with damping ${rounded(zeta)}; its peak is to stay below one half.`,
    remedy:
      'A lighter jaw, more damping, or a stiffer transmission: four times the stiffness at the same damping ratio doubles it.',
  }
}

function forceLimits(scenario: Scenario, options: WorkingPointOptions, words: LoopWording): Limit[] {
  const { servo, strategies, sensors } = scenario
  const { gauge } = sensors
  const { rate, deadband, speedLimit, target, velocity } = strategies.sensedForce
  const { acceleration } = axisFigures(scenario)
  const { softest, stiffest } = forceSlopes(scenario, options)
  const inner = velocity.kp * acceleration
  const delay = 1 / inner + 0.5 / rate + 1 / gauge.bandwidth
  const ripple = Math.hypot(gauge.noise, gauge.resolution / Math.sqrt(12))
  const quiet = deadband > 0 ? deadband / 3 : STIR * speedLimit
  return [
    {
      kind: 'delay',
      crossover: (Math.PI / 2 - PHASE_LEFT) / delay,
      because: `The lags add up to ${ms(delay)}: velocity loop ${ms(1 / inner)}, hold ${ms(0.5 / rate)}, gauge ${ms(1 / gauge.bandwidth)}; they may take 30° at the crossover with the stiffest part.`,
      remedy:
        'A faster velocity loop, a higher force loop rate or a gauge of more bandwidth, whichever lag is the largest.',
    },
    {
      kind: 'inner-loop',
      crossover: inner / 3,
      because: `The velocity loop inside crosses at about k_p·K/M = ${rads(inner)}; the force loop is to stay at a third of it (common practice, no source).`,
      remedy: `A higher velocity gain; the servo runs at ${rounded(servo.rate)} 1/s.`,
    },
    {
      kind: 'noise',
      crossover: ripple > 0 ? (stiffest * quiet) / ripple : Number.POSITIVE_INFINITY,
      because: `Noise and steps of the gauge, ${words.force(ripple)} rms, become speed through the gain; ${deadband > 0 ? 'three times that is to stay inside the dead band' : '5 % of the speed limit are allowed'}.`,
      remedy: 'Half the noise, or twice the dead band, which leaves a larger force error, doubles it.',
    },
    {
      kind: 'speed',
      crossover: (softest * speedLimit) / target,
      because: `At the speed limit of ${words.speed(speedLimit)} the force on the softest part grows by ${words.forceRate(softest * speedLimit)}; the whole target of ${words.force(target)} cannot swing faster. Small signals are not bound by it.`,
      remedy: 'A higher speed limit, at the price of a harder touch.',
    },
  ]
}
