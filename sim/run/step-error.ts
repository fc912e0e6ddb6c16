/**
 * How far the integration step puts the figures of a run off. The scheme is of first order: its error is halved with the step, so a run
 * at half the step shows half of it, and the whole is twice the change (extrapolation to step 0, Richardson, Phil. Trans. A 210, 1911;
 * as a stated uncertainty, Roache, J. Fluids Eng. 116, 1994).
 */
import { type Doubt, type GripResult, METRIC_IDS, type MetricId, type Metrics } from '../job/grip/result.ts'
import type { Scenario } from '../scenario/index.ts'

/** Step error from which on a run is doubted; own bound. */
const DOUBTFUL = 0.05

/** Slip below which its error counts as a share of this and not of itself [m]; common practice, no source. */
const LITTLE_SLIP = 1e-4

/** The order of the scheme makes this of the change at half the step. */
const WHOLE = 2

type Errors = Partial<Record<MetricId, number>>

/** Of an unstable run at a named step half of it tells nothing; it is held against the step that the stiffest mode asks for. */
const asksForChosen = ({ run }: Scenario, { events }: Pick<GripResult, 'events'>) =>
  events.unstable !== null && run.step !== null

/** The run that another is held against, and how much further its step is divided. */
export function finerRun(
  scenario: Scenario,
  result: Pick<GripResult, 'events'>,
): { scenario: Scenario; finer: number } {
  if (!asksForChosen(scenario, result)) return { scenario, finer: 2 }
  return { scenario: { ...scenario, run: { ...scenario.run, step: null } }, finer: 1 }
}

/** The same by its step alone. */
export function finerScenario(scenario: Scenario, result: Pick<GripResult, 'events' | 'step'>): Scenario {
  const step = asksForChosen(scenario, result) ? null : result.step / 2
  return { ...scenario, run: { ...scenario.run, step } }
}

/** Held against the run of `finerScenario`. */
export function stepCheck(
  result: GripResult,
  finer: GripResult,
): Pick<GripResult, 'stepError' | 'stepErrors' | 'doubt'> {
  const stepErrors = isStable(result) && isStable(finer) ? errorsBetween(result.metrics, finer.metrics) : {}
  const stepError = largestOf(result.metrics, stepErrors)
  return { stepError, stepErrors, doubt: doubtOf(result, finer, stepErrors, stepError) }
}

const isStable = ({ events }: GripResult) => events.unstable === null

function errorsBetween(coarse: Metrics, fine: Metrics): Errors {
  const pairs = METRIC_IDS.flatMap((id): [MetricId, number][] => {
    const [a, b] = [coarse[id], fine[id]]
    return a === null || b === null ? [] : [[id, WHOLE * Math.abs(a - b)]]
  })
  return Object.fromEntries(pairs)
}

/** Forces as a share of themselves; margins of the ratio that they are over one; slip of itself or of a tenth of a millimetre. */
function largestOf(metrics: Metrics, errors: Errors): number | null {
  const { peakForce, settledForce, holdMargin, damageMargin, slipDistance } = metrics
  if (!peakForce || !settledForce || errors.peakForce === undefined) return null
  const over = (error: number | undefined, size: number) => (error ?? 0) / size
  return Math.max(
    over(errors.peakForce, peakForce),
    over(errors.settledForce ?? WHOLE * settledForce, settledForce),
    over(errors.holdMargin, Math.max(1, 1 + (holdMargin ?? 0))),
    over(errors.damageMargin, Math.max(1, 1 + (damageMargin ?? 0))),
    over(errors.slipDistance, Math.max(LITTLE_SLIP, slipDistance ?? 0)),
  )
}

function doubtOf(
  { verdict, metrics }: GripResult,
  finer: GripResult,
  errors: Errors,
  error: number | null,
): Doubt | null {
  const about = (ground: Doubt['ground']) => ({ ground, step: finer.step, verdict: finer.verdict, error })
  if (finer.verdict !== verdict) return about('verdict')
  if (error !== null && error > DOUBTFUL) return about('error')
  const within = (id: 'holdMargin' | 'damageMargin') => (metrics[id] ?? Number.POSITIVE_INFINITY) < (errors[id] ?? 0)
  return verdict === 'held' && (within('holdMargin') || within('damageMargin')) ? about('margin') : null
}
