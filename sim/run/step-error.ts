/**
 * How far the integration step puts the figures of a run off. The scheme is of first order: its error is halved with the step, so a run
 * at half the step shows half of it, and the whole is twice the change (extrapolation to step 0, Richardson, Phil. Trans. A 210, 1911;
 * as a stated uncertainty, Roache, J. Fluids Eng. 116, 1994).
 */
import { jobOf } from '../job/index.ts'
import type { Doubt, Job, JobResult, RunResult, StepCheck, StepErrors } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'

/** Step error from which on a run is doubted; own bound. */
const DOUBTFUL = 0.05

/** The order of the scheme makes this of the change at half the step. */
const WHOLE = 2

/** Of an unstable run at a named step half of it tells nothing; it is held against the step that the stiffest mode asks for. */
const asksForChosen = ({ run }: Scenario, { events }: Pick<JobResult, 'events'>) =>
  events.unstable !== null && run.step !== null

/** The run that another is held against, and how much further its step is divided. */
export function finerRun(scenario: Scenario, result: Pick<JobResult, 'events'>): { scenario: Scenario; finer: number } {
  if (!asksForChosen(scenario, result)) return { scenario, finer: 2 }
  return { scenario: { ...scenario, run: { ...scenario.run, step: null } }, finer: 1 }
}

/** The same by its step alone. */
export function finerScenario(scenario: Scenario, result: Pick<RunResult, 'events' | 'step'>): Scenario {
  const step = asksForChosen(scenario, result) ? null : result.step / 2
  return { ...scenario, run: { ...scenario.run, step } }
}

/** Held against the run of `finerScenario`. */
export function stepCheck<R extends JobResult>(
  scenario: Pick<Scenario, 'job'>,
  result: RunResult<R>,
  finer: RunResult<R>,
): StepCheck<R> {
  const job = jobOf(scenario) as unknown as Job<R>
  const stable = isStable(result) && isStable(finer)
  const stepErrors: StepErrors<R> = stable ? errorsBetween<R>(result.metrics, finer.metrics) : {}
  const stepError = job.errorShare(result.metrics, stepErrors)
  return { stepError, stepErrors, doubt: doubtOf(job, result, finer, stepErrors, stepError) }
}

const isStable = ({ events }: Pick<JobResult, 'events'>) => events.unstable === null

function errorsBetween<R extends JobResult>(coarse: R['metrics'], fine: R['metrics']): StepErrors<R> {
  const pairs = Object.keys(coarse).flatMap((id): [string, number][] => {
    const [a, b] = [coarse[id], fine[id]]
    return typeof a === 'number' && typeof b === 'number' ? [[id, WHOLE * Math.abs(a - b)]] : []
  })
  return Object.fromEntries(pairs) as StepErrors<R>
}

function doubtOf<R extends JobResult>(
  job: Job<R>,
  result: R,
  finer: RunResult<R>,
  errors: StepErrors<R>,
  error: number | null,
): Doubt<R['verdict']> | null {
  const about = (ground: Doubt['ground']) => ({ ground, step: finer.step, verdict: finer.verdict, error })
  if (finer.verdict !== result.verdict) return about('verdict')
  if (error !== null && error > DOUBTFUL) return about('error')
  return job.isClose(result, errors) ? about('margin') : null
}
