/** One grip of one strategy: run it, judge it, and, if asked, state the error of its step. */
import { cooled, steadyStart, type Temperatures } from '../axis/cooling.ts'
import type { GripResult } from '../job/grip/result.ts'
import { judgeEnd, weakestOf } from '../job/grip/verdict.ts'
import type { RunEnd } from '../job/job.ts'
import { type Model, modelOf } from '../model/model.ts'
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Traces, tracesOf } from './channels.ts'
import { type Core, sourceCore } from './core.ts'
import { endOf } from './end.ts'
import { type Cycle, type CycleOptions, type OnChunk, type OnProgress, runCycle } from './run.ts'
import { stepErrorBetween } from './step-error.ts'

export interface SimulateOptions {
  /** The core that carries it out; the simulator's own files if left out. */
  core?: Core
  onChunk?: OnChunk
  /** Of all runs that the grip takes. */
  onProgress?: OnProgress | undefined
  /** Also run at half the step and fill in `stepError`. */
  stepError?: boolean
  /** Ends as soon as the part can no longer be held: the verdict is then `held` exactly where that of the whole run is. */
  untilLost?: boolean
}

export interface Judged {
  /** Its `hash` is '' where no traces were recorded. */
  result: GripResult
  /** Least mean force of the two contacts while the part hung in them [N]; null: it never did. */
  weakest: number | null
}

export interface Simulated extends Judged {
  traces: Traces
  /** Who was told of chunks or progress asked to stop; the result is of no use. */
  cancelled: boolean
}

/** With traces. Throws a Refusal where the scenario would take more than 2e8 steps, a RangeError for an unknown strategy. */
export function simulateGrip(scenario: Scenario, strategy: StrategyId, options: SimulateOptions = {}): Simulated {
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
  const result = judged(scenario, strategy, end)
  if (options.stepError && !cycle.cancelled)
    result.stepError = stepErrorOf(result, scenario, core, partOf(options.onProgress, share, 1))
  return { result, traces: tracesOf(cycle.columns ?? []), cancelled: cycle.cancelled, weakest: weakestOf(end) }
}

/** Without traces, which is quicker. Throws as `simulateGrip` does. */
export function judgeGrip(scenario: Scenario, strategy: StrategyId, options: SimulateOptions = {}): Judged {
  const { core = sourceCore, onProgress, untilLost } = options
  const { bench } = runDuty(modelOf(scenario, strategyOf(strategy)), { core, onProgress, untilLost })
  const end = endOf(bench, '')
  return { result: judged(scenario, strategy, end), weakest: weakestOf(end) }
}

function judged(scenario: Scenario, strategy: StrategyId, end: RunEnd): GripResult {
  const { verdict, metrics, events } = judgeEnd(scenario, end)
  return { strategy, verdict, stepError: null, metrics, events, hash: end.hash, cause: end.cause, step: end.step }
}

function stepErrorOf(
  result: GripResult,
  scenario: Scenario,
  core: Core,
  onProgress: OnProgress | undefined,
): number | null {
  const { bench } = runDuty(modelOf(scenario, strategyOf(result.strategy), { finer: 2 }), { core, onProgress })
  return stepErrorBetween(result, judgeEnd(scenario, endOf(bench, '')).metrics)
}

/** Share of the work that is done when the run at half the step begins, which takes twice the steps. */
const CHECKED = 1 / 3

/** What is told of the whole where a run is the part of it between two shares. */
const partOf = (onProgress: OnProgress | undefined, from: number, to: number): OnProgress | undefined =>
  onProgress && ((done) => onProgress(from + (to - from) * done))

/** Rounds of one cycle after which the steady temperatures of a duty stand; losses change with them, so one is not enough. */
const ROUNDS = 4
/** A motor this far above its ambient runs away [K]. */
const RUNAWAY = 500

/** A single grip from cold, or one of a duty that has gone on for ever, found from single cycles. */
function runDuty(model: Model, options: CycleOptions): Cycle {
  const { cycle: period, duration } = model.scenario.run
  if (period === null) return runCycle(model, options)
  const { thermal } = model.scenario.actuator.motor
  let start: Temperatures = { winding: thermal.ambient, housing: thermal.ambient }
  const part = (run: number) => partOf(options.onProgress, run / (ROUNDS + 1), (run + 1) / (ROUNDS + 1))
  for (let round = 0; round < ROUNDS; round++) {
    const cycle = runCycle(model, { core: options.core, onProgress: part(round), start })
    if (cycle.cancelled) return cycle
    const { winding, housing } = cycle.bench.axis.heat.state
    const next = steadyStart(thermal, start, cooled(thermal, { winding, housing }, period - duration), period)
    const hottest = thermal.ambient + RUNAWAY
    start = { winding: Math.min(next.winding, hottest), housing: Math.min(next.housing, hottest) }
  }
  return runCycle(model, { ...options, onProgress: part(ROUNDS), start })
}
