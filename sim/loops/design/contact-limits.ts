/** What limits a force loop where it meets something: what swings in contact, and in free air the gauge's own finger. */
import type { Scenario } from '../../scenario/index.ts'
import { Cascade } from '../cascade.ts'
import { type Complex, magnitude } from '../complex.ts'
import { type Examined, examine } from '../examine.ts'
import { type Contact, type WorkingPointOptions, workingPoint } from '../working-point.ts'
import { axisFigures, besideTransmission } from './axis-figures.ts'
import { scaledGains } from './scaled-gains.ts'

/** A damping ratio from which on a mode has no peak. */
const NO_PEAK = Math.SQRT1_2

export interface ContactResonance {
  /** Lowest crossover of the force loop with its gains such that the peak stands at what is allowed [rad/s]. */
  crossover: number
  /** The swing with the velocity loop closed [rad/s], and its damping ratio. */
  omega: number
  damping: number
  /** Moving mass [kg], and what the stiffest part on its pads answers the axis with [N/m]. */
  mass: number
  stiffness: number
  /** Share of a slow speed command that the velocity loop follows against the part: K·k_i/(K·k_i + k), K the motor force. */
  followed: number
}

interface Mode {
  omega: number
  damping: number
}

const modeOf = (pole: Complex, period: number): Mode => {
  const [real, imaginary] = [Math.log(magnitude(pole)) / period, Math.atan2(pole.im, pole.re) / period]
  const omega = Math.hypot(real, imaginary)
  return { omega, damping: -real / omega }
}

/**
 * The mode in contact with the stiffest part whose peak is the highest of those above the crossover, read off the sampled loop, and
 * the crossover that is left when all gains bring that peak to `peak`. Null where nothing swings, or nothing is left to cross.
 */
export function contactResonance(
  scenario: Scenario,
  options: WorkingPointOptions,
  peak: number,
): ContactResonance | null {
  const point = workingPoint(scenario, 'stiffest', options)
  const cascade = new Cascade(scenario, point)
  const { response, margins, period } = examine(cascade, 'force')
  const heightAt = ({ omega }: Mode) => {
    response.at(omega * period)
    return response.gain
  }
  const modes = cascade
    .closedPoles('velocity')
    .filter(({ im }) => im > 0)
    .map((pole) => modeOf(pole, 1 / scenario.servo.rate))
    .filter(({ omega, damping }) => damping < NO_PEAK && omega * period < Math.PI)
    .filter(({ omega }) => omega > Math.min(...margins.crossings, Number.POSITIVE_INFINITY))
  if (modes.length === 0) return null
  const swing = modes.reduce((most, mode) => (heightAt(mode) > heightAt(most) ? mode : most))
  const scaled = examine(new Cascade(scaledGains(scenario, 'force', peak / heightAt(swing)), point), 'force')
  if (scaled.margins.crossings.length === 0) return null
  return { crossover: scaled.margins.crossings[0]!, ...swing, ...againstPart(scenario, point.contact as Contact) }
}

function againstPart(scenario: Scenario, contact: Contact) {
  const { plant, mass } = axisFigures(scenario)
  const stiffness = besideTransmission(scenario, contact)
  const held = plant.forceConstant * scenario.strategies.sensedForce.velocity.ki
  return { mass, stiffness, followed: held / (held + stiffness) }
}

/** Crossover on the stiffest part [rad/s] of the gain that leaves `peak` of the gain margin in free air; null without a bound there. */
export function freeAir(scenario: Scenario, options: WorkingPointOptions, peak: number) {
  const look = (tried: Scenario, id: 'free' | 'stiffest'): Examined =>
    examine(new Cascade(tried, workingPoint(scenario, id, options)), 'force')
  const { margins, stability } = look(scenario, 'free')
  const { gainMargin } = margins
  if (gainMargin === null || stability !== 'stable') return null
  const { crossover } = look(scaledGains(scenario, 'force', peak * 10 ** (gainMargin / 20)), 'stiffest').margins
  if (crossover === null) return null
  return { crossover, gainMargin, fingerMass: scenario.sensors.gauge.fingerMass }
}
