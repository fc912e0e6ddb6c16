/** What a loop's figures do not say by themselves, in sentences. */
import { axisOf } from '../plant/axis.ts'
import type { Scenario } from '../scenario/index.ts'
import { type Complex, magnitude } from './complex.ts'
import type { Margins } from './margins.ts'
import type { LoopId } from './model.ts'
import { type LoopWording, rounded } from './wording.ts'
import type { WorkingPoint } from './working-point.ts'

/** `poles` with the largest first. */
export function noteOf(
  scenario: Scenario,
  loop: LoopId,
  point: WorkingPoint,
  poles: readonly Complex[],
  period: number,
  margins: Margins,
  words: LoopWording,
): string {
  const parts: string[] = []
  const largest = poles[0]!
  const { part } = scenario
  if (magnitude(largest) >= 1) parts.push(unstable(poles, period))
  if (margins.crossover === null) parts.push(`${noCrossover(loop, point)}.`)
  else if (margins.crossings.length > 1)
    parts.push(
      `The loop gain passes 1 at ${margins.crossings.map((w) => rounded(w)).join(', ')} rad/s; the phase margin is the least of them.`,
    )
  if (magnitude(largest) < 1 && margins.gainMargin === null) parts.push('The gain may rise without bound.')
  if (magnitude(largest) < 1 && margins.lowerGainMargin !== null)
    parts.push(
      `Conditionally stable: it oscillates as well when the gain falls by ${rounded(-margins.lowerGainMargin)} dB.`,
    )
  if (loop === 'current' && margins.lowerGainMargin !== null && scenario.drive.backEmfFeedforward > 0)
    parts.push('An estimate: the back-EMF feed-forward from the slower servo, which causes this, is counted as a lag.')
  if (loop === 'velocity' && point.contact && scenario.strategies.sensedForce.velocity.ki > 0)
    parts.push('At rest it is content with any force; only the force loop decides on one.')
  if (point.contact && point.force >= (part.crackForce ?? Number.POSITIVE_INFINITY))
    parts.push(`The part would crack at ${words.force(part.crackForce!)}, below the working force.`)
  else if (point.contact && point.force >= (part.yieldForce ?? Number.POSITIVE_INFINITY))
    parts.push(`The part yields at ${words.force(part.yieldForce!)}; the stiffness is that of its springing back.`)
  if (loop === 'force' && point.contact === null && scenario.strategies.sensedForce.ki > 0)
    parts.push('The integral stands at the speed limit and takes no part.')
  return parts.join(' ')
}

function unstable(poles: readonly Complex[], period: number): string {
  const outside = poles.filter((pole) => magnitude(pole) >= 1)
  const worst = outside[0]!
  const growth = Math.log(magnitude(worst)) / period
  const frequency = Math.abs(Math.atan2(worst.im, worst.re)) / period / (2 * Math.PI)
  const doubling = growth > 0 ? `, and doubles every ${rounded((Math.LN2 / growth) * 1e3)} ms` : ''
  return `Unstable: ${outside.length} of ${poles.length} poles lie on or outside the unit circle; the fastest growing one swings at ${rounded(frequency)} Hz${doubling}. No margin exists.`
}

function noCrossover(loop: LoopId, { contact }: WorkingPoint): string {
  if (loop === 'force' && contact === null)
    return 'No crossover: in free air the gauge feels nothing but the inertia of its finger, so there is no force to control'
  return 'No crossover: the loop gain does not fall through 1 at any frequency, so the loop has no bandwidth and no phase margin'
}

/** What Coulomb friction does to loops whose margins are those of an axis without it. */
export function frictionNote(scenario: Scenario, words: LoopWording): string {
  const { coulomb, breakaway, bristleStiffness } = scenario.actuator.transmission
  const axis = axisOf(scenario.actuator)
  const { ki, deadband, velocity } = scenario.strategies.sensedForce
  if (breakaway === 0 && axis.raise < 1e-9) return 'The axis has no dry friction; the linear loops are the whole story.'
  const parts = [
    `The margins are those of a moving axis with its viscous friction only. At rest friction of up to ${words.force(breakaway)} (${rounded(breakaway / axis.forceConstant)} A) holds it like a spring of ${words.stiffness(bristleStiffness)}, and the loops move nothing until their integral has broken it away.`,
  ]
  if (axis.raise >= 1e-9)
    parts.push(
      `Under load the transmission adds ${rounded(axis.raise * 100)} % of the load closing and ${rounded(axis.lower * 100)} % opening.`,
    )
  if (breakaway > coulomb)
    parts.push(
      `Break-away lies ${words.force(breakaway - coulomb)} above sliding friction: with an integral in the loop the axis can stick and slip about its target, which no linear margin shows.`,
    )
  if ((ki > 0 || velocity.ki > 0) && deadband === 0) parts.push('The force loop has no dead band to end such hunting.')
  return parts.join(' ')
}
