/** What the figures of one column do. */

export interface Stats {
  least: number
  most: number
  missing: number
  /** Rows on which it goes up, and down. */
  rises: number
  falls: number
  /** Smallest step between rows that follow each other; 0: it never changes. */
  resolution: number
}

export function statsOf(values: Float64Array): Stats {
  const stats = { least: Number.NaN, most: Number.NaN, missing: 0, rises: 0, falls: 0, resolution: 0 }
  let [least, most, finest, last] = [Infinity, -Infinity, Infinity, Number.NaN]
  for (const value of values) {
    if (Number.isNaN(value)) {
      stats.missing++
      continue
    }
    if (value < least) least = value
    if (value > most) most = value
    const step = Math.abs(value - last)
    if (value > last) stats.rises++
    else if (value < last) stats.falls++
    if (step > 0 && step < finest) finest = step
    last = value
  }
  if (least <= most) Object.assign(stats, { least, most, resolution: finest === Infinity ? 0 : finest })
  return stats
}

/** Most values that a median is taken of; of more, evenly drawn ones. */
const ENOUGH = 100_000

/** Of the steps upwards between rows that follow each other; NaN: there is none. */
export function medianRise(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / ENOUGH))
  const steps: number[] = []
  for (let i = 1; i < values.length; i += stride) {
    const step = values[i]! - values[i - 1]!
    if (step > 0) steps.push(step)
  }
  if (steps.length === 0) return Number.NaN
  return steps.sort((a, b) => a - b)[Math.floor((steps.length - 1) / 2)]!
}
