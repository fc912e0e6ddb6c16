/** Statistics of measured values. All sort by number, leave their input alone, and throw a RangeError without values. */

function sorted(values: readonly number[]): number[] {
  if (values.length === 0) throw new RangeError('no values')
  return [...values].sort((a, b) => a - b)
}

export const least = (values: readonly number[]): number => sorted(values)[0]!

/** Percentile by linear interpolation between closest ranks (Hyndman and Fan, The American Statistician 50, 1996, type 7). */
export function percentile(values: readonly number[], percent: number): number {
  const list = sorted(values)
  const rank = (percent / 100) * (list.length - 1)
  const below = Math.floor(rank)
  const low = list[below]!
  const high = list[Math.min(below + 1, list.length - 1)]!
  return low + (rank - below) * (high - low)
}

export const median = (values: readonly number[]): number => percentile(values, 50)

/** Median distance from the median. */
export function spread(values: readonly number[]): number {
  const middle = median(values)
  return median(values.map((value) => Math.abs(value - middle)))
}
