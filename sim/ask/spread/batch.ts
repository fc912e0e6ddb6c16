/** A study's smallest piece of work: the grips of one batch of parts by one strategy. */
import { METRIC_IDS } from '../../job/grip/result.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { Runner } from '../runner.ts'
import { type Draws, drawing } from './draw.ts'
import { DEMANDS, FATES, outcomeOf } from './outcome.ts'
import { BATCH } from './points.ts'

export interface SpreadStudy extends Draws {
  scenario: Scenario
  strategies: StrategyId[]
  /** Parts, each gripped by every strategy. */
  grips: number
}

/** Plain numbers, so that it goes from worker to page and into a file. A row a part, in the order of their indices. */
export interface Batch {
  strategy: StrategyId
  batch: number
  /** Places in FATES. */
  fates: Uint8Array
  /** A bit for each of DEMANDS that failed. */
  failed: Uint32Array
  spare: Float64Array
  /** METRIC_IDS.length figures a part. */
  figures: Float64Array
  /** Of each quantity that varies, how many of the parts have it cut at the end of its range. */
  cut: Uint8Array
}

export const batchesOf = (grips: number) => Math.ceil(grips / BATCH)

/** Which parts a batch holds: the first, and the one after the last. */
export const rangeOf = (batch: number, grips: number) => [batch * BATCH, Math.min(grips, (batch + 1) * BATCH)] as const

/** Prepares a study, which throws a Refusal where its correlations contradict each other, and runs its batches one by one. */
export function batchRunner(study: SpreadStudy, run: Runner): (batch: number, strategy: StrategyId) => Batch {
  const draw = drawing(study.scenario, study)
  return (batch, strategy) => {
    const [first, end] = rangeOf(batch, study.grips)
    const parts = Array.from({ length: end - first }, (_, at) => draw(first + at))
    const outcomes = parts.map((part) => outcomeOf(part, strategy, run))
    const cut = study.scenario.spread.varies.map((_, at) => parts.filter((part) => part.cut[at]).length)
    return {
      strategy,
      batch,
      fates: Uint8Array.from(outcomes, ({ fate }) => FATES.indexOf(fate)),
      failed: Uint32Array.from(outcomes, ({ failed }) => bitsOf(failed)),
      spare: Float64Array.from(outcomes, ({ spare }) => spare),
      figures: Float64Array.from(outcomes.flatMap(({ figures }) => figures)),
      cut: Uint8Array.from(cut),
    }
  }
}

const bitsOf = (failed: readonly (typeof DEMANDS)[number][]) =>
  failed.reduce((bits, id) => (bits | (1 << DEMANDS.indexOf(id))) >>> 0, 0)

export const figureAt = (batch: Batch, row: number, place: number) => batch.figures[row * METRIC_IDS.length + place]!
