/** One grip of one strategy: run it, judge it, and, if asked, state the error of its step. */
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import type { OnChunk } from './recorder.ts'
import type { GripResult, Traces } from './result.ts'
import { runGrip } from './run.ts'
import { substepsOf } from './step.ts'
import { judge } from './verdict.ts'

export interface SimulateOptions {
  onChunk?: OnChunk
  /** Also run at half the step and fill in `stepError`. */
  stepError?: boolean
}

export interface Simulated {
  result: GripResult
  traces: Traces
  /** The receiver of the chunks asked to stop; the result is of no use. */
  cancelled: boolean
}

/** Throws a RangeError where the scenario would take more than 2e8 steps, or for an unknown strategy. */
export function simulateGrip(scenario: Scenario, strategy: StrategyId, options: SimulateOptions = {}): Simulated {
  const kind = strategyOf(strategy)
  const substeps = substepsOf(scenario)
  const step = 1 / scenario.drive.currentRate / substeps
  const run = runGrip(scenario, kind, substeps, options.onChunk)
  const result = judge(scenario, strategy, step, run)
  if (options.stepError && !run.cancelled) result.stepError = stepErrorOf(scenario, result)
  return { result, traces: run.traces, cancelled: run.cancelled }
}

/** Largest relative change of peak and settled force when the step is halved; null for a run without force. */
export function stepErrorOf(scenario: Scenario, { strategy, metrics, events }: GripResult): number | null {
  if (events.unstable !== null || !metrics.peakForce || !metrics.settledForce) return null
  const half = runGrip(scenario, strategyOf(strategy), 2 * substepsOf(scenario)).metrics
  const change = (a: number, b: number | null) => Math.abs((b ?? 0) / a - 1)
  return Math.max(change(metrics.peakForce, half.peakForce), change(metrics.settledForce, half.settledForce))
}
