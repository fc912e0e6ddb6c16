/** What a proposed value must stand beside the run: a dozen seeds of the noise, and margins of the loops no worse than is sound. */

import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type LoopMargins, loopMargins } from './loop-margins.ts'
import { schemaAt } from './rescue-parameters.ts'
import type { AnyRunner } from './runner.ts'

/** Why values that hold are no rescue: they lie too close together, or what is proposed leaves too little. */
export type Flaw =
  | { kind: 'narrow' }
  | { kind: 'unstable loop' }
  | { kind: 'phase margin' | 'gain margin'; value: number }
  | { kind: 'noise'; held: number; of: number }

/** Least margins that a change may leave: 30° and a factor of 2 (Åström and Murray, Feedback Systems, 2008, from memory). */
const LEAST_PHASE = 30
const LEAST_GAIN = 20 * Math.log10(2)
const SEEDS = 12

/** What is asked of every parameter alike. */
export interface Question {
  scenario: Scenario
  strategy: StrategyId
  run: AnyRunner
  /** On the bench. */
  margins: LoopMargins | null
}

/** Of the strategy's loops; null where there is no linear model of finite numbers. */
export function marginsOf(scenario: Scenario, strategy: StrategyId): LoopMargins | null {
  try {
    return loopMargins(scenario, strategy)
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** With how many of a dozen seeds it is held, which it is (`held`) with its own; without noise they are all the same run. */
export function seedsOf({ strategy, run }: Question, scenario: Scenario, held: boolean): { held: number; of: number } {
  const { drive, sensors } = scenario
  const holds = (seed: number) => {
    const again = { ...scenario, run: { ...scenario.run, seed } }
    return run(again, strategy, { untilLost: true }).result.verdict === jobOf(scenario).well
  }
  const { seed } = scenario.run
  if (drive.currentNoise === 0 && !(strategyOf(strategy).sensed && sensors.gauge.noise > 0))
    return { held: held ? SEEDS : 0, of: SEEDS }
  const step = seed + SEEDS > schemaAt(scenario, 'run.seed').maximum ? -1 : 1
  const others = Array.from({ length: SEEDS - 1 }, (_, n) => seed + (n + 1) * step)
  return { held: others.filter(holds).length + (held ? 1 : 0), of: SEEDS }
}

/** What the margins fall short of, unless they were no better before. */
export function flawOf(now: LoopMargins, before: LoopMargins | null): Flaw | null {
  if (!now.stable) return before && !before.stable ? null : { kind: 'unstable loop' }
  const short = (
    kind: 'phase margin' | 'gain margin',
    value: number | null,
    least: number,
    was: number | null | undefined,
  ): Flaw | null =>
    value !== null && value < least && !(typeof was === 'number' && was <= value) ? { kind, value } : null
  return (
    short('phase margin', now.phaseMargin, LEAST_PHASE, before?.phaseMargin) ??
    short('gain margin', now.gainMargin, LEAST_GAIN, before?.gainMargin)
  )
}
