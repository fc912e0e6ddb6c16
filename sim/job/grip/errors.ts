/** What the integration step does to the figures of a grip, once it is known how far it puts each off. */
import type { StepErrors } from '../job.ts'
import type { GripJudgement, Metrics } from './result.ts'

/** Slip below which its error counts as a share of this and not of itself [m]; common practice, no source. */
const LITTLE_SLIP = 1e-4

/** Forces as a share of themselves; margins of the ratio that they are over one; slip of itself or of a tenth of a millimetre. */
export function errorShare(metrics: Metrics, errors: StepErrors<GripJudgement>): number | null {
  const { peakForce, settledForce, holdMargin, damageMargin, slipDistance } = metrics
  if (!peakForce || !settledForce || Object.keys(errors).length === 0) return null
  const over = (error: number | undefined, size: number) => (error ?? 0) / size
  return Math.max(
    over(errors.peakForce ?? GONE * peakForce, peakForce),
    over(errors.settledForce ?? GONE * settledForce, settledForce),
    over(errors.holdMargin, Math.max(1, 1 + (holdMargin ?? 0))),
    over(errors.damageMargin, Math.max(1, 1 + (damageMargin ?? 0))),
    over(errors.slipDistance, Math.max(LITTLE_SLIP, slipDistance ?? 0)),
  )
}

/** Error of a force that the finer run does not have, as twice the change to none: in shares of itself. */
const GONE = 2

/** A margin that is smaller than its error. */
export function isClose({ verdict, metrics }: GripJudgement, errors: StepErrors<GripJudgement>): boolean {
  const within = (id: 'holdMargin' | 'damageMargin') => (metrics[id] ?? Number.POSITIVE_INFINITY) < (errors[id] ?? 0)
  return verdict === 'held' && (within('holdMargin') || within('damageMargin'))
}
