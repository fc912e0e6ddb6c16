/** What a loop's figures do not say by themselves, as facts; `sim/say` puts them into sentences. */
import { forcePerAmpereAt } from '../axis/flux.ts'
import { axisOf } from '../axis/reflect.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Examined } from './examine.ts'
import type { LoopId } from './model.ts'
import { growthOf, type Stability } from './stability.ts'
import type { WorkingPoint } from './working-point.ts'

export type LoopRemark =
  /** Poles outside the unit circle; the fastest growing one swings at `swing` [rad/s] and doubles every `doubling` [s]. */
  | { kind: 'unstable'; outside: number; of: number; swing: number; doubling: number }
  /** A pole on the unit circle swings at `swing` [rad/s], 0 for one that only stays. */
  | { kind: 'on the border'; swing: number }
  /** What the current loop is with the servo's command held, where it is not stable with the servo around it. */
  | { kind: 'by itself'; stability: Stability }
  | { kind: 'nothing to feel' }
  /** The loop gain is 0 at every frequency. */
  | { kind: 'no gain' }
  /** The loop gain falls nowhere through 1; whether there is a bandwidth all the same. */
  | { kind: 'no crossover'; bandwidth: boolean }
  /** |L/(1 + L)| lies below −3 dB from the lowest frequency on, or above it up to the highest. */
  | { kind: 'no bandwidth'; closed: 'below' | 'above' }
  /** Frequencies at which the loop gain passes 1 [rad/s]. */
  | { kind: 'crossings'; at: number[] }
  | { kind: 'gain without bound' }
  /** Oscillates when the gain falls by so much [dB]: the loop itself, or, of the current loop, the servo around it. */
  | { kind: 'conditionally stable' | 'too slow for the servo'; fall: number }
  | { kind: 'content with any force' }
  /** Tangent of one contact to quick changes and to those that the part has relaxed to [N/m]. */
  | { kind: 'relaxes'; quick: number; slow: number }
  /** Limit of the part below the working force [N]. */
  | { kind: 'cracks' | 'yields'; force: number }
  | { kind: 'idle integral' }

export function remarksOn(scenario: Scenario, loop: LoopId, point: WorkingPoint, examined: Examined): LoopRemark[] {
  return [
    ...stabilityRemarks(examined),
    ...crossoverRemarks(loop, point, examined),
    ...gainRemarks(loop, examined),
    ...contactRemarks(scenario, loop, point),
  ]
}

function stabilityRemarks({ closed, polePeriod, stability, byItself }: Examined): LoopRemark[] {
  if (stability === 'stable') return []
  const worst = closed[0]!
  const swing = Math.abs(Math.atan2(worst.im, worst.re)) / polePeriod
  const alone: LoopRemark[] = byItself ? [{ kind: 'by itself', stability: byItself }] : []
  if (stability === 'border') return [{ kind: 'on the border', swing }, ...alone]
  const outside = closed.filter((pole) => growthOf(pole, polePeriod) > 0).length
  const doubling = Math.LN2 / growthOf(worst, polePeriod)
  return [{ kind: 'unstable', outside, of: closed.length, swing, doubling }, ...alone]
}

function crossoverRemarks(loop: LoopId, point: WorkingPoint, { margins, stability }: Examined): LoopRemark[] {
  const { crossover, crossings, bandwidth, noBandwidth, largestGain } = margins
  if (largestGain === 0) return [{ kind: 'no gain' }]
  if (crossover === null && loop === 'force' && point.contact === null) return [{ kind: 'nothing to feel' }]
  if (crossover === null) return [{ kind: 'no crossover', bandwidth: bandwidth !== null }]
  return [
    ...(crossings.length > 1 ? [{ kind: 'crossings' as const, at: crossings }] : []),
    ...(stability === 'stable' && noBandwidth !== '' ? [{ kind: 'no bandwidth' as const, closed: noBandwidth }] : []),
  ]
}

function gainRemarks(loop: LoopId, { margins, stability }: Examined): LoopRemark[] {
  const { gainMargin, lowerGainMargin, largestGain } = margins
  if (stability !== 'stable' || largestGain === 0) return []
  const lower = loop === 'current' ? 'too slow for the servo' : 'conditionally stable'
  return [
    ...(gainMargin === null ? [{ kind: 'gain without bound' as const }] : []),
    ...(lowerGainMargin === null ? [] : [{ kind: lower, fall: -lowerGainMargin } as const]),
  ]
}

function contactRemarks({ part, strategies }: Scenario, loop: LoopId, point: WorkingPoint): LoopRemark[] {
  const { ki, velocity } = strategies.sensedForce
  const remarks: LoopRemark[] = []
  if (loop === 'velocity' && point.contact && velocity.ki > 0) remarks.push({ kind: 'content with any force' })
  if (loop === 'force' && point.contact && part.relaxation.fraction > 0)
    remarks.push({ kind: 'relaxes', quick: point.contact.stiffness, slow: point.contact.slow })
  if (point.contact && part.crackForce !== undefined && point.force >= part.crackForce)
    remarks.push({ kind: 'cracks', force: part.crackForce })
  else if (point.contact && part.yieldForce !== undefined && point.force >= part.yieldForce)
    remarks.push({ kind: 'yields', force: part.yieldForce })
  if (loop === 'force' && point.contact === null && ki > 0) remarks.push({ kind: 'idle integral' })
  return remarks
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
  const { raise, lower } = axisOf(actuator)
  const { ki, deadband, velocity } = strategies.sensedForce
  return {
    coulomb,
    breakaway,
    current: breakaway / forcePerAmpereAt(actuator),
    bristleStiffness,
    raise,
    lower,
    integral: ki > 0 || velocity.ki > 0,
    deadband: deadband > 0,
  }
}
