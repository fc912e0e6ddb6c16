/** What limits a force loop where it meets something: the axis swinging on the part, and in free air the gauge's own finger. */
import type { Scenario } from '../../scenario/index.ts'
import { analyseLoops } from '../analyse.ts'
import { type Contact, jawStiffness, type WorkingPointOptions, workingPoint } from '../working-point.ts'
import { axisFigures } from './axis-figures.ts'
import { scaledGains } from './scaled-gains.ts'

/** A damping ratio from which on a resonance has no peak. */
const NO_PEAK = Math.SQRT1_2

export interface ContactResonance {
  /** Crossover of the force loop at which the peak stands at `peak` [rad/s]. */
  crossover: number
  /** What swings [kg] on what [N/m], at which frequency [rad/s] and damping ratio. */
  mass: number
  stiffness: number
  omega: number
  damping: number
  /** Share of a slow speed command that the velocity loop still follows against the part. */
  followed: number
}

/** Axis and stiffest part: what of the velocity loop (proportional k_p, integral k_i, times motor force K) the force loop acts on. */
function pressed(scenario: Scenario, options: WorkingPointOptions) {
  const { plant, mass } = axisFigures(scenario)
  const { kp, ki } = scenario.strategies.sensedForce.velocity
  const contact = workingPoint(scenario, 'stiffest', options).contact as Contact
  const [jaw, link] = [jawStiffness(scenario, contact), scenario.actuator.transmission.stiffness]
  const stiffness = (jaw * link) / (jaw + link)
  const held = plant.forceConstant * ki
  return {
    mass,
    stiffness,
    proportional: plant.forceConstant * kp,
    held,
    viscous: scenario.actuator.transmission.viscous,
    followed: held / (held + stiffness),
  }
}

/**
 * x/v = (K·k_p + K·k_i/s)/(M·s² + (b + K·k_p)·s + K·k_i + k): the travel that answers a speed command against a spring k. Slow
 * commands are followed with K·k_i/(K·k_i + k) only, while the resonance still answers in full, so that a gain with the peak at
 * `peak` crosses at peak·followed/|x/v|. Null where it has no peak.
 */
export function axisOnPart(scenario: Scenario, options: WorkingPointOptions, peak: number): ContactResonance | null {
  const { mass, stiffness, proportional, held, viscous, followed } = pressed(scenario, options)
  const omega = Math.sqrt((stiffness + held) / mass)
  const damping = (viscous + proportional) / (2 * mass * omega)
  if (damping >= NO_PEAK) return null
  const answer = Math.hypot(proportional, held / omega) / ((viscous + proportional) * omega)
  return { crossover: (peak * followed) / answer, mass, stiffness: stiffness + held, omega, damping, followed }
}

/** Crossover on the stiffest part [rad/s] of the gain that leaves `peak` of the gain margin in free air; null without a bound there. */
export function freeAir(scenario: Scenario, options: WorkingPointOptions, peak: number) {
  const at = (tried: Scenario, id: 'free' | 'stiffest') =>
    analyseLoops(tried, { ...options, loops: ['force'], workingPoints: [id] }).loops[0]!
  const gainMargin = at(scenario, 'free').margins?.gainMargin ?? null
  if (gainMargin === null) return null
  const factor = peak * 10 ** (gainMargin / 20)
  const { crossover } = at(scaledGains(scenario, 'force', factor), 'stiffest')
  return crossover === null
    ? null
    : { crossover, gainMargin, fingerMass: scenario.strategies.sensedForce.sensor.fingerMass }
}
