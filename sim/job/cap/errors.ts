/** What the integration step does to the figures of a closure, once it is known how far it puts each off. */
import type { StepErrors } from '../job.ts'
import type { CapJudgement, CapMetrics } from './result.ts'

/** Angle below which its error counts as a share of this and not of itself [rad]; common practice, no source. */
const LITTLE_ANGLE = 0.1

/** Error of a figure that the finer run does not have, as twice the change to none: in shares of itself. */
const GONE = 2

/** Torques and preload as a share of themselves, the angle past the liner of itself or of some degrees, a margin of the ratio that it is over one. */
export function errorShare(metrics: CapMetrics, errors: StepErrors<CapJudgement>): number | null {
  const { peakTorque, settledTorque, applicationTorque, preload, seatAngle, torqueMargin } = metrics
  if (!peakTorque || !applicationTorque || Object.keys(errors).length === 0) return null
  return Math.max(
    (errors.peakTorque ?? GONE * peakTorque) / peakTorque,
    (errors.applicationTorque ?? GONE * applicationTorque) / applicationTorque,
    settledTorque && settledTorque > 0 ? (errors.settledTorque ?? GONE * settledTorque) / applicationTorque : 0,
    preload ? (errors.preload ?? GONE * preload) / preload : 0,
    seatAngle === null ? 0 : (errors.seatAngle ?? 0) / Math.max(LITTLE_ANGLE, Math.abs(seatAngle)),
    (errors.torqueMargin ?? 0) / Math.max(1, 1 + (torqueMargin ?? 0)),
  )
}

/** A margin that is smaller than its error. */
export function isClose({ verdict, metrics }: CapJudgement, errors: StepErrors<CapJudgement>): boolean {
  const within = (id: 'torqueMargin' | 'stripMargin') => (metrics[id] ?? Number.POSITIVE_INFINITY) < (errors[id] ?? 0)
  return verdict === 'tight' && (within('torqueMargin') || within('stripMargin'))
}
