/** What a loop's figures do not say by themselves, as facts; `sim/say` puts them into sentences. */
import { forcePerAmpereAt } from '../axis/flux.ts'
import { axisOf } from '../axis/reflect.ts'
import type { JobId, Scenario } from '../scenario/index.ts'
import type { Examined } from './examine.ts'
import { loopsOf } from './jobs/index.ts'
import type { WorkLimit } from './jobs/job.ts'
import type { LoopId } from './model.ts'
import { growthOf, type Stability } from './stability.ts'
import type { Contact, WorkingPoint } from './working-point.ts'

export type LoopRemark =
  /** Poles outside the unit circle; the fastest growing one swings at `swing` [rad/s] and doubles every `doubling` [s]. */
  | { kind: 'unstable'; outside: number; of: number; swing: number; doubling: number }
  /** A pole on the unit circle swings at `swing` [rad/s], 0 for one that only stays. */
  | { kind: 'on the border'; swing: number }
  /** What the current loop is with the servo's command held, where it is not stable with the servo around it. */
  | { kind: 'by itself'; stability: Stability }
  | { kind: 'nothing to feel'; job: JobId }
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
  | { kind: 'content with any force'; job: JobId }
  /** Stiffness to quick changes and to those that the work has relaxed to [effort by way of the output]. */
  | { kind: 'relaxes'; job: JobId; quick: number; slow: number }
  /** A stretch leaves with the work, with this time constant [s]. */
  | { kind: 'forgets'; job: JobId; time: number }
  /** The output passes with this speed [m/s or rad/s], against so much stiffness. */
  | { kind: 'slides'; job: JobId; speed: number; stiffness: number }
  /** Friction of the work holds elastically as long as the effort swings by no more than `room` [N or N·m]. */
  | { kind: 'held by friction'; job: JobId; room: number }
  /** Limit of the work below the working effort [N or N·m]. */
  | { kind: WorkLimit['kind']; force: number }
  | { kind: 'idle integral' }

export function remarksOn(scenario: Scenario, loop: LoopId, point: WorkingPoint, examined: Examined): LoopRemark[] {
  return [
    ...stabilityRemarks(examined),
    ...crossoverRemarks(scenario.job, loop, point, examined),
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

function crossoverRemarks(
  job: JobId,
  loop: LoopId,
  point: WorkingPoint,
  { margins, stability }: Examined,
): LoopRemark[] {
  const { crossover, crossings, bandwidth, noBandwidth, largestGain } = margins
  if (crossover === null && loop === 'force' && point.contact === null) return [{ kind: 'nothing to feel', job }]
  if (largestGain === 0) return [{ kind: 'no gain' }]
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

function contactRemarks(scenario: Scenario, loop: LoopId, point: WorkingPoint): LoopRemark[] {
  const { ki, velocity } = scenario.strategies.sensedForce
  const { job } = scenario
  const { contact } = point
  if (!contact) return loop === 'force' && ki > 0 ? [{ kind: 'idle integral' }] : []
  const remarks: LoopRemark[] = []
  const forgets = contact.forgets !== undefined
  if (loop === 'velocity' && velocity.ki > 0 && !forgets) remarks.push({ kind: 'content with any force', job })
  if (loop === 'force') remarks.push(...givingRemarks(job, point, contact))
  const limit = loopsOf(scenario).limit(scenario, point)
  return limit ? [...remarks, limit] : remarks
}

/** Share of a stiffness from which on another one is the same to three digits or so. */
const ALIKE = 0.995

/** How what is pressed on answers otherwise than a spring. */
function givingRemarks(job: JobId, { speed, room }: WorkingPoint, contact: Contact): LoopRemark[] {
  const { stiffness, slow, forgets, grips } = contact
  if (forgets !== undefined) return [{ kind: 'forgets', job, time: forgets }]
  const remarks: LoopRemark[] = []
  if (grips === 'slides') remarks.push({ kind: 'slides', job, speed, stiffness })
  if (grips === 'holds') remarks.push({ kind: 'held by friction', job, room })
  return slow < ALIKE * stiffness ? [...remarks, { kind: 'relaxes', job, quick: stiffness, slow }] : remarks
}

/** Dry friction beside loops whose margins are those of an axis without it. */
export interface DryFriction {
  job: JobId
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

export function dryFriction({ job, actuator, strategies }: Scenario): DryFriction {
  const { coulomb, breakaway, bristleStiffness } = actuator.transmission
  const { raise, lower } = axisOf(actuator)
  const { ki, deadband, velocity } = strategies.sensedForce
  return {
    job,
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
