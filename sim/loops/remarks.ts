/** What a loop's figures do not say by themselves, as facts; `sim/say` puts them into sentences. */
import { axisOf } from '../axis/reflect.ts'
import type { Scenario } from '../scenario/index.ts'
import { type Complex, magnitude } from './complex.ts'
import type { Margins } from './margins.ts'
import type { LoopId } from './model.ts'
import type { WorkingPoint } from './working-point.ts'

export type LoopRemark =
  /** Poles on or outside the unit circle; the fastest growing one swings at `swing` [rad/s] and doubles every `doubling` [s], if it grows. */
  | { kind: 'unstable'; outside: number; of: number; swing: number; doubling: number | null }
  | { kind: 'nothing to feel' }
  | { kind: 'no crossover' }
  /** Frequencies at which the loop gain passes 1 [rad/s]. */
  | { kind: 'crossings'; at: number[] }
  | { kind: 'gain without bound' }
  /** Oscillates when the gain falls by so much [dB]. */
  | { kind: 'conditionally stable'; fall: number }
  | { kind: 'estimate' }
  | { kind: 'content with any force' }
  /** Limit of the part below the working force [N]. */
  | { kind: 'cracks' | 'yields'; force: number }
  | { kind: 'idle integral' }

/** `poles` with the largest first. */
export function remarksOn(
  scenario: Scenario,
  loop: LoopId,
  point: WorkingPoint,
  poles: readonly Complex[],
  period: number,
  margins: Margins,
): LoopRemark[] {
  const { drive, part, strategies } = scenario
  const { ki, velocity } = strategies.sensedForce
  const stable = magnitude(poles[0]!) < 1
  const { crossings, lowerGainMargin } = margins
  const remarks: LoopRemark[] = []
  if (!stable) remarks.push(unstable(poles, period))
  if (margins.crossover === null)
    remarks.push({ kind: loop === 'force' && point.contact === null ? 'nothing to feel' : 'no crossover' })
  else if (crossings.length > 1) remarks.push({ kind: 'crossings', at: crossings })
  if (stable && margins.gainMargin === null) remarks.push({ kind: 'gain without bound' })
  if (stable && lowerGainMargin !== null) remarks.push({ kind: 'conditionally stable', fall: -lowerGainMargin })
  if (loop === 'current' && lowerGainMargin !== null && drive.backEmfFeedforward > 0) remarks.push({ kind: 'estimate' })
  if (loop === 'velocity' && point.contact && velocity.ki > 0) remarks.push({ kind: 'content with any force' })
  if (point.contact && part.crackForce !== undefined && point.force >= part.crackForce)
    remarks.push({ kind: 'cracks', force: part.crackForce })
  else if (point.contact && part.yieldForce !== undefined && point.force >= part.yieldForce)
    remarks.push({ kind: 'yields', force: part.yieldForce })
  if (loop === 'force' && point.contact === null && ki > 0) remarks.push({ kind: 'idle integral' })
  return remarks
}

function unstable(poles: readonly Complex[], period: number): LoopRemark {
  const outside = poles.filter((pole) => magnitude(pole) >= 1)
  const worst = outside[0]!
  const growth = Math.log(magnitude(worst)) / period
  return {
    kind: 'unstable',
    outside: outside.length,
    of: poles.length,
    swing: Math.abs(Math.atan2(worst.im, worst.re)) / period,
    doubling: growth > 0 ? Math.LN2 / growth : null,
  }
}

/** Dry friction beside loops whose margins are those of an axis without it. */
export interface DryFriction {
  /** Sliding and at rest [N], and the current that it takes to break away [A]. */
  coulomb: number
  breakaway: number
  current: number
  /** Stiffness with which it holds [N/m]. */
  bristleStiffness: number
  /** What it adds under load, closing and opening, over the load. */
  raise: number
  lower: number
  /** The force loop, or the velocity loop inside, has an integral; and the force loop a dead band. */
  integral: boolean
  deadband: boolean
}

export function dryFriction({ actuator, strategies }: Scenario): DryFriction {
  const { coulomb, breakaway, bristleStiffness } = actuator.transmission
  const { forcePerAmpere, raise, lower } = axisOf(actuator)
  const { ki, deadband, velocity } = strategies.sensedForce
  return {
    coulomb,
    breakaway,
    current: breakaway / forcePerAmpere,
    bristleStiffness,
    raise,
    lower,
    integral: ki > 0 || velocity.ki > 0,
    deadband: deadband > 0,
  }
}
