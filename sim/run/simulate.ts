/** One run of one strategy: carry it out, judge it, and, if asked, state the error of its step. */
import type { GripJudgement } from '../job/grip/result.ts'
import type { Job, JobResult, Ran, RunEnd, RunResult, StepCheck } from '../job/job.ts'
import { overloadsOf } from '../job/ratings.ts'
import { requirementsOf } from '../job/requirements.ts'
import { type Model, modelOf } from '../model/model.ts'
import { Refusal, type Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { channelsOf, type Traces, tracesOf } from './channels.ts'
import { type Core, sourceCore } from './core.ts'
import { runDuty } from './duty.ts'
import { endOf } from './end.ts'
import { type CycleOptions, type OnChunk, type OnProgress, partOf } from './run.ts'
import { finerScenarios, stepCheck, uncheckable } from './step-error.ts'

export interface SimulateOptions {
  /** The core that carries it out; the simulator's own files if left out. */
  core?: Core
  onChunk?: OnChunk
  /** Of all runs that it takes. */
  onProgress?: OnProgress | undefined
  /** Also run at finer steps and fill in `stepError`, `stepErrors`, `scattered` and `doubt`. */
  stepError?: boolean
  /** Ends as soon as nothing that still comes can make it good: the verdict is then a good one exactly where that of the whole run is. */
  untilLost?: boolean
}

export interface Simulated<R extends JobResult = GripJudgement> extends Ran<R> {
  traces: Traces
  /** Who was told of chunks or progress asked to stop; the result is of no use. */
  cancelled: boolean
}

/** With traces. Throws a Refusal where the scenario would take more than 2e8 steps, a RangeError for an unknown strategy. */
export function simulate<R extends JobResult>(
  scenario: Scenario,
  strategy: StrategyId,
  options: SimulateOptions = {},
): Simulated<R> {
  const { core = sourceCore, onChunk, untilLost } = options
  const share = options.stepError ? CHECKED : 1
  const model = modelOf(scenario, strategyOf(strategy))
  const cycle = runDuty(model, {
    core,
    onChunk,
    onProgress: partOf(options.onProgress, 0, share),
    untilLost,
    record: true,
  })
  const end = endOf(cycle.bench, cycle.hash)
  const told = ranOf<R>(model, end)
  const { result } = told
  if (options.stepError && !cycle.cancelled)
    Object.assign(result, checked(scenario, result, { core, onProgress: partOf(options.onProgress, share, 1) }))
  const traces = tracesOf(cycle.columns ?? [], channelsOf(model.job))
  return { ...told, traces, cancelled: cycle.cancelled }
}

/** The result held against runs at finer steps, one after the other, if they may be run at all. */
function checked<R extends JobResult>(scenario: Scenario, result: RunResult<R>, options: CycleOptions): StepCheck<R> {
  try {
    const models = finerScenarios(scenario, result).map((finer) => modelOf(finer, strategyOf(result.strategy)))
    const finer = models.map((model, n) => {
      const onProgress = partOf(options.onProgress, n / models.length, (n + 1) / models.length)
      return ranOf<R>(model, endOf(runDuty(model, { ...options, onProgress }).bench, '')).result
    })
    return stepCheck(scenario, result, finer)
  } catch (error) {
    if (error instanceof Refusal) return uncheckable(result)
    throw error
  }
}

/** Without traces, which is quicker; the `hash` is ''. Throws as `simulate` does. */
export function judge<R extends JobResult>(
  scenario: Scenario,
  strategy: StrategyId,
  options: SimulateOptions = {},
): Ran<R> {
  const { core = sourceCore, onProgress, untilLost } = options
  const model = modelOf(scenario, strategyOf(strategy))
  const { bench } = runDuty(model, { core, onProgress, untilLost })
  return ranOf<R>(model, endOf(bench, ''))
}

/** The same of a scenario that grips. */
export const simulateGrip = simulate<GripJudgement>
export const judgeGrip = judge<GripJudgement>

function ranOf<R extends JobResult>({ scenario, strategy, ...model }: Model, end: RunEnd): Ran<R> {
  const job = model.job as unknown as Job<R>
  const { hash, cause, step } = end
  const unchecked = { stepError: null, stepErrors: null, scattered: [], doubt: null }
  const judged = job.judge(scenario, end)
  const requirements = requirementsOf(scenario, job.figures, judged)
  const beside = { overloads: overloadsOf(scenario, end), requirements, ...unchecked, hash, cause, step }
  return { result: { strategy: strategy.id, ...beside, ...judged } as RunResult<R>, weakest: job.weakestOf(end) }
}

/** Share of the work that is done when runs at finer steps begin: at half and a third of it they take five times the steps. */
const CHECKED = 1 / 6
