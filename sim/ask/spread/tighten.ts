/** What a tighter tolerance would buy: the same parts and noise gripped again with one quantity nearer to its middle. */
import type { Scenario, Varied } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { ShareOf } from './answer.ts'
import type { Batch, SpreadStudy } from './batch.ts'
import { normalQuantile, studentQuantile } from './distributions.ts'
import { variedPaths } from './draw.ts'
import { type Interval, shareInterval } from './intervals.ts'
import { fatesOf, isFit } from './outcome.ts'
import { BATCH, type Sampling, SCRAMBLINGS, scramblingOf } from './points.ts'
import { allBatches } from './run.ts'
import { fateAt, type Tally } from './tally.ts'
import type { Crew } from './tasks.ts'

/** By scrambling: parts gripped before and after a change, held as required after it, and those that only one of the two holds. */
interface PairCounts {
  sizes: number[]
  fit: number[]
  gained: number[]
  lost: number[]
}

/** Of one strategy and one quantity. */
export interface TightCounts extends PairCounts {
  strategy: StrategyId
  path: string
}

export interface Gained {
  /** Held as required after the change. */
  share: ShareOf
  /** How much more than before; 95 % limits of the difference over the same parts. */
  gain: { share: number } & Interval
}

export interface Tightened extends Gained {
  strategy: StrategyId
  path: string
}

/**
 * The law drawn together by `factor`, 0 … 1, about its middle: the value of the file, the most likely one of a triangular law, the mean of
 * a measured list. A tolerance keeps its capability.
 */
export function tightLaw(varied: Varied, factor: number): Varied {
  const by = (size: number | undefined) => size && size * factor
  switch (varied.law) {
    case 'normal': {
      const { sd, tolerance, within } = varied
      const sizes = { sd: by(sd), tolerance: by(tolerance), within: by(within) }
      return { ...varied, ...Object.fromEntries(Object.entries(sizes).filter(([, size]) => size !== undefined)) }
    }
    case 'uniform':
      return { ...varied, half: varied.half! * factor }
    case 'triangular': {
      const { low, mode, high } = varied as Required<Varied>
      return { ...varied, low: mode + (low - mode) * factor, high: mode + (high - mode) * factor }
    }
    case 'lognormal':
      return { ...varied, factor: varied.factor! ** factor }
    case 'measured': {
      const values = varied.values!
      const mean = values.reduce((sum, each) => sum + each, 0) / values.length
      return { ...varied, values: values.map((each) => mean + (each - mean) * factor) }
    }
  }
}

/** The scenario with the spread of one quantity drawn together. */
export function tightScenario(scenario: Scenario, path: string, factor: number): Scenario {
  const varies = scenario.spread.varies.map((each) => (each.path === path ? tightLaw(each, factor) : each))
  return { ...scenario, spread: { ...scenario.spread, varies } }
}

/**
 * Grips the parts of the given batches once more for every quantity; `tallies` are those of the study and hold these batches already.
 * `told` hears of each batch, with the share done, and returns whether to go on.
 */
export async function runTightened(
  study: SpreadStudy,
  tallies: Tally[],
  factor: number,
  crew: Crew,
  told: (done: number, counts: TightCounts[]) => boolean = () => true,
  batches = allBatches(study),
): Promise<TightCounts[]> {
  const paths = variedPaths(study.scenario)
  const items = batches.flatMap((batch) => study.strategies.map((strategy) => ({ batch, strategy })))
  const counts = tallies.flatMap(({ strategy }) => paths.map((path) => emptyCounts(strategy, path)))
  let [done, goOn] = [0, true]
  for (const path of paths) {
    if (!goOn) break
    const tight = { ...study, scenario: tightScenario(study.scenario, path, factor) }
    await crew.work('spread', tight, items, (batch) => {
      const own = counts.find((each) => each.strategy === batch.strategy && each.path === path)!
      compare(own, batch, tallies.find(({ strategy }) => strategy === batch.strategy)!)
      done++
      goOn = told(done / (items.length * paths.length), counts)
      return goOn
    })
  }
  return counts
}

const zeros = () => Array.from({ length: SCRAMBLINGS }, () => 0)

const noCounts = (): PairCounts => ({ sizes: zeros(), fit: zeros(), gained: zeros(), lost: zeros() })

const emptyCounts = (strategy: StrategyId, path: string): TightCounts => ({ strategy, path, ...noCounts() })

function compare(counts: PairCounts, batch: Batch, before: Tally): void {
  const fates = fatesOf(before.job)
  for (const [row, place] of batch.fates.entries()) {
    const index = batch.batch * BATCH + row
    const now = batch.failed[row] === 0 && isFit(before.job, { fate: fates[place]!, failed: [] })
    pair(counts, index, fateAt(before, index)!.fit, now)
  }
}

function pair({ sizes, fit, gained, lost }: PairCounts, index: number, was: boolean, now: boolean): void {
  const scrambling = scramblingOf(index)
  sizes[scrambling]!++
  if (now) fit[scrambling]!++
  if (now && !was) gained[scrambling]!++
  if (was && !now) lost[scrambling]!++
}

/** Of two tallies of the same parts, all of them. */
export function gainedOf(sampling: Sampling, before: Tally, after: Tally): Gained {
  const counts = noCounts()
  const size = total(after.sizes)
  for (let index = 0; index < size; index++) pair(counts, index, fateAt(before, index)!.fit, fateAt(after, index)!.fit)
  return answered(sampling, counts)
}

/** Adds the counts of other batches. */
export function joinTightened(into: TightCounts[], from: TightCounts[]): void {
  for (const [at, more] of from.entries())
    for (const key of ['sizes', 'fit', 'gained', 'lost'] as const)
      for (const [scrambling, count] of more[key].entries()) into[at]![key][scrambling]! += count
}

/** Of counts of at least one part. */
export const tightenedOf = (sampling: Sampling, { strategy, path, ...counts }: TightCounts): Tightened => ({
  strategy,
  path,
  ...answered(sampling, counts),
})

function answered(sampling: Sampling, counts: PairCounts): Gained {
  const { sizes, fit, gained, lost } = counts
  const [size, held] = [total(sizes), total(fit)]
  const share = { count: held, share: held / size, ...shareInterval(sampling, fit, sizes) }
  const gain = { share: (total(gained) - total(lost)) / size, ...gainInterval(sampling, counts) }
  return { share, gain }
}

/**
 * Of the difference of two shares of the same parts. Random samples: Bonett and Price, Adjusted Wald confidence interval for a difference
 * of binomial proportions based on paired data, J. Educ. Behav. Stat. 37 (2012). Others: what the differences of the scramblings scatter,
 * by Student's law, one part more allowed for; nowhere wider than for random ones.
 */
export function gainInterval(
  sampling: Sampling,
  { sizes, gained, lost }: Pick<PairCounts, 'sizes' | 'gained' | 'lost'>,
  confidence = 0.95,
): Interval {
  const size = total(sizes)
  const tail = (1 + confidence) / 2
  const [more, less] = [(total(gained) + 1) / (size + 2), (total(lost) + 1) / (size + 2)]
  const middle = more - less
  const reach = normalQuantile(tail) * Math.sqrt((more + less - middle * middle) / (size + 2))
  const groups = sizes.filter((each) => each > 0).length
  if (sampling === 'random' || groups < 2) return within(middle, reach)
  const gain = (total(gained) - total(lost)) / size
  const square = sizes.reduce((sum, own, k) => sum + (gained[k]! - lost[k]! - gain * own) ** 2, 0)
  const error = Math.sqrt(((square + 1) * groups) / (groups - 1)) / size
  const scattered = studentQuantile(tail, groups - 1) * error
  return scattered < reach ? within(gain, scattered) : within(middle, reach)
}

const within = (middle: number, reach: number): Interval => ({
  low: Math.max(-1, middle - reach),
  high: Math.min(1, middle + reach),
})

const total = (counts: readonly number[]) => counts.reduce((sum, each) => sum + each, 0)
