/** What the integration step does to the figures of a pressed joint, once it is known how far it puts each off. */
import type { StepErrors } from '../job.ts'
import type { PressJudgement, PressMetrics } from './result.ts'

/** Depth below which its error counts as a share of this and not of itself [m]; common practice, no source. */
const LITTLE_DEPTH = 1e-4

/** Error of a figure that the finer run does not have, as twice the change to none: in shares of itself. */
const GONE = 2

/** Forces as a share of themselves, depth of itself or of a tenth of a millimetre, margins of the ratio that they are over one. */
export function errorShare(metrics: PressMetrics, errors: StepErrors<PressJudgement>): number | null {
  const { peakForce, settledForce, seatForce, depth, bandMargin } = metrics
  if (!peakForce || !settledForce || Object.keys(errors).length === 0) return null
  return Math.max(
    (errors.peakForce ?? GONE * peakForce) / peakForce,
    (errors.settledForce ?? GONE * settledForce) / settledForce,
    seatForce ? (errors.seatForce ?? GONE * seatForce) / seatForce : 0,
    (errors.depth ?? 0) / Math.max(LITTLE_DEPTH, depth ?? 0),
    (errors.bandMargin ?? 0) / Math.max(1, 1 + (bandMargin ?? 0)),
  )
}

/** A margin that is smaller than its error. */
export function isClose({ verdict, metrics }: PressJudgement, errors: StepErrors<PressJudgement>): boolean {
  const within = (id: 'bandMargin' | 'forceMargin') => (metrics[id] ?? Number.POSITIVE_INFINITY) < (errors[id] ?? 0)
  return verdict === 'seated' && (within('bandMargin') || within('forceMargin'))
}
