/** What a study answers, from the tally so far: shares with their 95 % intervals, figures, the worst parts. SI units. */
import { RATINGS } from '../../job/ratings.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { variedPaths } from './draw.ts'
import { ExactSum } from './exact-sum.ts'
import { type Interval, shareInterval } from './intervals.ts'
import { type Demand, demandsOf, type Fate, fatesOf, figuresOf } from './outcome.ts'
import type { Sampling } from './points.ts'
import type { Tally, Worst } from './tally.ts'

export interface ShareOf extends Interval {
  /** Parts. */
  count: number
  share: number
}

export interface FigureSpread {
  /** Parts that have the figure. */
  count: number
  mean: number | null
  sd: number | null
  /** By the share of parts below. */
  quantiles: Record<(typeof QUANTILES)[number], number | null>
}

export const QUANTILES = ['0.01', '0.05', '0.25', '0.5', '0.75', '0.95', '0.99'] as const

export interface SpreadAnswer {
  strategy: StrategyId
  /** Parts gripped so far. */
  grips: number
  shares: Record<Fate, ShareOf>
  /** Done well, every requirement met and no rating exceeded. */
  fit: ShareOf
  /** Of every requirement of the scenario and every rating. */
  failed: Record<Demand, ShareOf>
  figures: Record<string, FigureSpread>
  worst: Worst[]
  /** Quantities whose law leaves the range of the format, and the share of parts that were cut. */
  cut: { path: string; share: number }[]
}

export const CONFIDENCE = 0.95

export function answerOf(scenario: Scenario, sampling: Sampling, tally: Tally): SpreadAnswer {
  const grips = sum(tally.sizes)
  const share = (counts: number[]): ShareOf => ({
    count: sum(counts),
    share: sum(counts) / grips,
    ...shareInterval(sampling, counts, tally.sizes, CONFIDENCE),
  })
  const [every, demands] = [fatesOf(scenario.job), demandsOf(scenario.job)]
  const requirements: Record<string, unknown> = scenario.requirements
  const asked = demands.filter((id) => isRating(id) || requirements[id] !== undefined)
  const fates = every.filter((fate, at) => fate !== 'refused' || sum(tally.byFate[at]!) > 0)
  return {
    strategy: tally.strategy,
    grips,
    shares: Object.fromEntries(fates.map((fate) => [fate, share(tally.byFate[every.indexOf(fate)]!)])),
    fit: share(tally.fit),
    failed: Object.fromEntries(asked.map((id) => [id, share(tally.failed[demands.indexOf(id)]!)])),
    figures: Object.fromEntries(figuresOf(scenario.job).map((id, at) => [id, figureSpread(tally, at)])),
    worst: tally.worst,
    cut: variedPaths(scenario).flatMap((path, at) => {
      const cut = tally.cut[at]!
      return cut > 0 ? [{ path, share: cut / grips }] : []
    }),
  }
}

const isRating = (id: Demand) => RATINGS.some((rating) => id === `rating.${rating}`)

function figureSpread(tally: Tally, at: number): FigureSpread {
  const all = new ExactSum()
  for (const each of tally.sums[at]!) all.join(each)
  const known = (value: number) => (Number.isFinite(value) ? value : null)
  const quantiles = QUANTILES.map((p) => [p, known(tally.sketches[at]!.quantile(Number(p)))])
  return { count: all.count, mean: known(all.mean), sd: known(all.sd), quantiles: Object.fromEntries(quantiles) }
}

const sum = (counts: number[]) => counts.reduce((total, each) => total + each, 0)
