/** How far the truth may be from what a study counted or averaged. */
import { betaQuantile, normalQuantile, studentQuantile } from './distributions.ts'
import type { Sampling } from './points.ts'

export interface Interval {
  low: number
  high: number
}

/** Of a share after `k` of `n` independent trials: exact limits (Clopper and Pearson, The use of confidence or fiducial limits, 1934). */
export function exactInterval(k: number, n: number, confidence = 0.95): Interval {
  const tail = (1 - confidence) / 2
  return { low: exactLower(k, n, 1 - tail), high: exactUpper(k, n, 1 - tail) }
}

/** The share is no larger, but for a chance of 1 − confidence. */
export const exactUpper = (k: number, n: number, confidence = 0.95): number =>
  k >= n ? 1 : betaQuantile(confidence, k + 1, n - k)

/** The share is no smaller, but for a chance of 1 − confidence. */
export const exactLower = (k: number, n: number, confidence = 0.95): number =>
  k <= 0 ? 0 : betaQuantile(1 - confidence, k, n - k + 1)

/**
 * Of a share from the counts and sizes of the scramblings. Random samples: exact. Others: what the counts scatter about their mean
 * says how many independent samples would be as good, with Student's allowance for so few scramblings (Korn and Graubard, Confidence
 * intervals for proportions with small expected number of positive counts, Survey Methodology 24, 1998), and the limits are those of
 * Jeffreys' law for that many; nowhere wider than the exact ones, for balanced points scatter no more than random ones.
 *
 * Scramblings that agree have not told that they always would: one more in one of them is allowed for. Where few are counted (below
 * some 10 in all), or the share is known to less than a count, the interval holds the truth more often than it says: counts are whole.
 */
export function shareInterval(
  sampling: Sampling,
  counts: readonly number[],
  sizes: readonly number[],
  confidence = 0.95,
): Interval {
  const { sum, size, groups, square } = spreadOf(counts, sizes)
  const exact = exactInterval(sum, size, confidence)
  if (sampling === 'random' || groups < 2 || sum === 0 || sum === size) return exact
  const tail = (1 - confidence) / 2
  const share = sum / size
  const variance = ((square + 1) * groups) / (groups - 1) / size ** 2
  const allowance = normalQuantile(tail) / studentQuantile(tail, groups - 1)
  const trials = ((share * (1 - share)) / variance) * allowance ** 2
  const limit = (at: number) => betaQuantile(at, trials * share + 0.5, trials * (1 - share) + 0.5)
  return { low: Math.max(exact.low, limit(tail)), high: Math.min(exact.high, limit(1 - tail)) }
}

/**
 * Of a mean from the sums and sizes of the scramblings, by Student's law of their means; null where nothing can be told of it: fewer
 * than two scramblings, or all of one mean.
 */
export function meanInterval(sums: readonly number[], sizes: readonly number[], confidence = 0.95): Interval | null {
  const { sum, size, groups, square } = spreadOf(sums, sizes)
  if (groups < 2 || square === 0) return null
  const error = Math.sqrt((square * groups) / (groups - 1)) / size
  const reach = studentQuantile((1 + confidence) / 2, groups - 1) * error
  return { low: sum / size - reach, high: sum / size + reach }
}

/** Sums of groups against what the common mean would have made them. */
function spreadOf(sums: readonly number[], sizes: readonly number[]) {
  const sum = sums.reduce((total, each) => total + each, 0)
  const size = sizes.reduce((total, each) => total + each, 0)
  const groups = sizes.filter((each) => each > 0).length
  const square = sums.reduce((total, each, k) => total + (each - (sum / size) * sizes[k]!) ** 2, 0)
  return { sum, size, groups, square }
}
