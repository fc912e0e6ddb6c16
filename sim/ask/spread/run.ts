/** Carries a study out with a crew, all of it or some of its batches. */
import { type Batch, batchesOf, type SpreadStudy } from './batch.ts'
import { count, emptyTally, type Tally } from './tally.ts'
import type { Crew } from './tasks.ts'

export interface SpreadProgress {
  tallies: Tally[]
  /** Batches that are in, of so many; each by every strategy. */
  done: number
  of: number
  /** The one that came last. */
  batch: Batch
}

/** Every batch of a study, by number. */
export const allBatches = ({ grips }: SpreadStudy) => Array.from({ length: batchesOf(grips) }, (_, batch) => batch)

/**
 * `told` hears of each batch of each strategy and returns whether to go on. Rejects with a Refusal where the correlations of the
 * scenario contradict each other.
 */
export async function runSpread(
  study: SpreadStudy,
  crew: Crew,
  told: (progress: SpreadProgress) => boolean = () => true,
  batches = allBatches(study),
): Promise<Tally[]> {
  const tallies = study.strategies.map((strategy) =>
    emptyTally(study.scenario.job, strategy, study.scenario.spread.varies.length),
  )
  const items = batches.flatMap((batch) => study.strategies.map((strategy) => ({ batch, strategy })))
  let done = 0
  await crew.work('spread', study, items, (batch) => {
    count(tallies.find(({ strategy }) => strategy === batch.strategy)!, batch)
    done++
    return told({ tallies, done, of: items.length, batch })
  })
  return tallies
}
