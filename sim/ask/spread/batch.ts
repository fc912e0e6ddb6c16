/** A study's smallest piece of work: the grips of one batch of parts by one strategy. */
import type { JobId, Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { AnyRunner } from '../runner.ts'
import { type Draws, drawing } from './draw.ts'
import { type Demand, demandsOf, fatesOf, outcomeOf } from './outcome.ts'
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
  /** Places in the job's fates. */
  fates: Uint8Array
  /** A bit for each of the job's demands that failed, as a whole number: there may be more than 32. */
  failed: Float64Array
  spare: Float64Array
  /** Each part's figures, one part after the other. */
  figures: Float64Array
  /** Of each quantity that varies, how many of the parts have it cut at the end of its range. */
  cut: Uint8Array
}

export const batchesOf = (grips: number) => Math.ceil(grips / BATCH)

/** Which parts a batch holds: the first, and the one after the last. */
export const rangeOf = (batch: number, grips: number) => [batch * BATCH, Math.min(grips, (batch + 1) * BATCH)] as const

/** Prepares a study, which throws a Refusal where its correlations contradict each other, and runs its batches one by one. */
export function batchRunner(study: SpreadStudy, run: AnyRunner): (batch: number, strategy: StrategyId) => Batch {
  const { job } = study.scenario
  const fates = fatesOf(job)
  const draw = drawing(study.scenario, study)
  return (batch, strategy) => {
    const [first, end] = rangeOf(batch, study.grips)
    const parts = Array.from({ length: end - first }, (_, at) => draw(first + at))
    const outcomes = parts.map((part) => outcomeOf(part, strategy, run))
    const cut = study.scenario.spread.varies.map((_, at) => parts.filter((part) => part.cut[at]).length)
    return {
      strategy,
      batch,
      fates: Uint8Array.from(outcomes, ({ fate }) => fates.indexOf(fate)),
      failed: Float64Array.from(outcomes, ({ failed }) => bitsOf(job, failed)),
      spare: Float64Array.from(outcomes, ({ spare }) => spare),
      figures: Float64Array.from(outcomes.flatMap(({ figures }) => figures)),
      cut: Uint8Array.from(cut),
    }
  }
}

const bitsOf = (job: JobId, failed: readonly Demand[]) => {
  const demands = demandsOf(job)
  return failed.reduce((bits, id) => bits + 2 ** demands.indexOf(id), 0)
}

/** What a part of a batch has failed. */
export const failedAt = (demands: readonly Demand[], { failed }: Batch, row: number): Demand[] =>
  failed[row] === 0 ? [] : demands.filter((_, bit) => Math.floor(failed[row]! / 2 ** bit) % 2 === 1)

export const figureAt = ({ figures, fates }: Batch, row: number, place: number) =>
  figures[row * (figures.length / fates.length) + place]!
