/** One grip of one strategy: run it, judge it, and, if asked, state the error of its step. */
import { cooled, steadyStart, type Temperatures } from '../plant/heat.ts'
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId, StrategyKind } from '../strategy/strategy.ts'
import type { OnChunk } from './recorder.ts'
import type { GripResult, Metrics, Traces } from './result.ts'
import { type Run, runGrip } from './run.ts'
import { substepsOf } from './step.ts'
import { judge } from './verdict.ts'

export interface SimulateOptions {
  onChunk?: OnChunk
  /** Also run at half the step and fill in `stepError`. */
  stepError?: boolean
  /** Ends as soon as the part can no longer be held: the verdict is then `held` exactly where that of the whole run is. */
  untilLost?: boolean
}

export interface Simulated {
  result: GripResult
  traces: Traces
  /** The receiver of the chunks asked to stop; the result is of no use. */
  cancelled: boolean
  /** Least mean force of the two contacts while the part hung in them [N]; null: it never did. */
  weakest: number | null
}

/** Throws a RangeError where the scenario would take more than 2e8 steps, or for an unknown strategy. */
export function simulateGrip(scenario: Scenario, strategy: StrategyId, options: SimulateOptions = {}): Simulated {
  const kind = strategyOf(strategy)
  const substeps = substepsOf(scenario)
  const run = runDuty(scenario, kind, substeps, options)
  const step = 1 / scenario.drive.currentRate / substeps
  const result = judge(scenario, strategy, step, run)
  if (options.stepError && !run.cancelled)
    result.stepError = stepErrorBetween(result, runDuty(scenario, kind, 2 * substeps).metrics)
  return { result, traces: run.traces, cancelled: run.cancelled, weakest: run.weakest }
}

/** Largest relative change of peak and settled force from a run to one at half its step; null for a run without force. */
export function stepErrorBetween({ metrics, events }: GripResult, half: Metrics): number | null {
  if (events.unstable !== null || !metrics.peakForce || !metrics.settledForce) return null
  const change = (a: number, b: number | null) => Math.abs((b ?? 0) / a - 1)
  return Math.max(change(metrics.peakForce, half.peakForce), change(metrics.settledForce, half.settledForce))
}

/** Rounds of one cycle after which the steady temperatures of a duty stand; losses change with them, so one is not enough. */
const ROUNDS = 4
/** A motor this far above its ambient runs away [K]. */
const RUNAWAY = 500

/** A single grip from cold, or one of a duty that has gone on for ever, found from single cycles. */
function runDuty(scenario: Scenario, kind: StrategyKind, substeps: number, options: SimulateOptions = {}): Run {
  const { onChunk, untilLost } = options
  const { cycle, duration } = scenario.run
  if (cycle === null) return runGrip(scenario, kind, substeps, { onChunk, untilLost })
  const { thermal } = scenario.actuator.motor
  let start: Temperatures = { winding: thermal.ambient, housing: thermal.ambient }
  for (let round = 0; round < ROUNDS; round++) {
    const { temperatures } = runGrip(scenario, kind, substeps, { start })
    const next = steadyStart(thermal, start, cooled(thermal, temperatures, cycle - duration), cycle)
    const hottest = thermal.ambient + RUNAWAY
    start = { winding: Math.min(next.winding, hottest), housing: Math.min(next.housing, hottest) }
  }
  return runGrip(scenario, kind, substeps, { start, onChunk, untilLost })
}
