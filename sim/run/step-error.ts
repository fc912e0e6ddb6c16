/**
 * How far the integration step puts the figures of a run off. The scheme is of first order: its error is halved with the step, so a run
 * at half the step shows half of it, and the whole is twice the change (extrapolation to step 0, Richardson, Phil. Trans. A 210, 1911;
 * as a stated uncertainty, Roache, J. Fluids Eng. 116, 1994). What is measured with noise or in steps goes another way at another step,
 * though it is drawn the same: there a single change tells little, so a run at a third of the step is asked as well, of which the
 * whole is 1.5 times the change. Where the two do not agree, chance decides more than the step does.
 */
import { jobOf } from '../job/index.ts'
import type { Doubt, Job, JobResult, RunResult, StepCheck, StepErrors } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'

/** Step error from which on a run is doubted; own bound. */
const DOUBTFUL = 0.05

/** Ratio of two tellings of an error beyond which they do not agree, and the share of a figure below which that is rounding; own bounds. */
const AGREE = 2
const ROUNDING = 1e-9

/** Of an unstable run at a named step half of it tells nothing; it is held against the step that the stiffest mode asks for. */
const asksForChosen = ({ run }: Scenario, { events }: Pick<JobResult, 'events'>) =>
  events.unstable !== null && run.step !== null

/** Anything that is measured with noise or in steps. */
const isRough = ({ drive, sensors: { encoder, gauge } }: Scenario) =>
  [drive.currentNoise, drive.currentResolution, encoder.resolution, gauge.noise, gauge.resolution].some(
    (size) => size > 0,
  )

/** What a run is held against: the same at finer steps. */
export function finerScenarios(scenario: Scenario, result: Pick<RunResult, 'events' | 'step'>): Scenario[] {
  const at = (step: number | null) => ({ ...scenario, run: { ...scenario.run, step } })
  if (asksForChosen(scenario, result)) return [at(null)]
  const parts = isRough(scenario) && result.events.unstable === null ? [2, 3] : [2]
  return parts.map((part) => at(result.step / part))
}

/** Held against the runs of `finerScenarios`, in any order. */
export function stepCheck<R extends JobResult>(
  scenario: Pick<Scenario, 'job'>,
  result: RunResult<R>,
  finer: RunResult<R>[],
): StepCheck<R> {
  const job = jobOf(scenario) as unknown as Job<R>
  const stable = [result, ...finer].every(({ events }) => events.unstable === null)
  const told = stable ? finer.map((fine) => errorsBetween(result, fine)) : []
  const stepErrors = largest(told)
  const stepError = job.errorShare(result.metrics, stepErrors)
  const scattered = scatteredOf(told, result.metrics)
  return { stepError, stepErrors, scattered, doubt: doubtOf(job, result, finer, stepErrors, stepError) }
}

/** Where the finer runs were refused, as they would take too many steps, or were not to be had. */
export function uncheckable<R extends JobResult>({ events, step, verdict }: RunResult<R>): StepCheck<R> {
  const doubt: Doubt<R['verdict']> = { ground: 'untold', step, verdict, error: null }
  return { stepError: null, stepErrors: {}, scattered: [], doubt: events.unstable === null ? null : doubt }
}

function errorsBetween<R extends JobResult>(coarse: RunResult<R>, fine: RunResult<R>): StepErrors<R> {
  const whole = coarse.step / (coarse.step - fine.step)
  const pairs = Object.keys(coarse.metrics).flatMap((id): [string, number][] => {
    const [a, b] = [coarse.metrics[id], fine.metrics[id]]
    return typeof a === 'number' && typeof b === 'number' ? [[id, whole * Math.abs(a - b)]] : []
  })
  return Object.fromEntries(pairs) as StepErrors<R>
}

/** Of the figures that every finer run has. */
function largest<R extends JobResult>([first = {}, ...others]: StepErrors<R>[]): StepErrors<R> {
  const pairs = Object.entries<number>(first as Record<string, number>).flatMap(([id, error]): [string, number][] => {
    const beside = others.map((errors) => errors[id as keyof R['metrics']])
    return beside.includes(undefined) ? [] : [[id, Math.max(error, ...(beside as number[]))]]
  })
  return Object.fromEntries(pairs) as StepErrors<R>
}

function scatteredOf([first, second]: StepErrors[], metrics: JobResult['metrics']): string[] {
  if (!first || !second) return []
  return Object.keys(first).filter((id) => {
    const [a, b] = [first[id] ?? 0, second[id] ?? 0]
    const most = Math.max(a, b)
    return most > AGREE * Math.min(a, b) && most > ROUNDING * Math.abs(metrics[id] ?? 0)
  })
}

function doubtOf<R extends JobResult>(
  job: Job<R>,
  result: R,
  finer: RunResult<R>[],
  errors: StepErrors<R>,
  error: number | null,
): Doubt<R['verdict']> | null {
  const unlike = finer.filter(({ verdict }) => verdict !== result.verdict)
  const other = unlike.find(({ events }) => events.unstable !== null) ?? unlike[0]
  const { step, verdict } = other ?? finer[0]!
  const about = (ground: Doubt['ground']) => ({ ground, step, verdict, error })
  if (other) return about('verdict')
  if (error !== null && error > DOUBTFUL) return about('error')
  return job.isClose(result, errors) ? about('margin') : null
}
