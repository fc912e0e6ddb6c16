/** Columns of a log on other instants. */

/** The same column with the rows that have no value filled in a straight line, at its ends with the nearest; all NaN stays so. */
export function filled(time: Float64Array, values: Float64Array): Float64Array {
  const made = values.slice()
  let last = -1
  for (let k = 0; k < made.length; k++) {
    if (Number.isNaN(made[k]!)) continue
    for (let j = last + 1; j < k; j++) {
      const share = last < 0 ? 1 : (time[j]! - time[last]!) / (time[k]! - time[last]!)
      made[j] = last < 0 ? made[k]! : made[last]! + share * (made[k]! - made[last]!)
    }
    last = k
  }
  if (last >= 0) made.fill(made[last]!, last + 1)
  return made
}

/** Values in a straight line between rows, beyond the ends those of the ends. Both times rise. */
export function interpolated(time: Float64Array, values: Float64Array, at: Float64Array): Float64Array {
  const made = new Float64Array(at.length)
  let k = 0
  for (let n = 0; n < at.length; n++) {
    const t = at[n]!
    while (k < time.length - 2 && time[k + 1]! <= t) k++
    const [from, to] = [time[k]!, time[k + 1] ?? time[k]!]
    const share = to > from ? Math.min(1, Math.max(0, (t - from) / (to - from))) : 0
    const start = values[k]!
    made[n] = share === 0 ? start : start + share * ((values[k + 1] ?? start) - start)
  }
  return made
}

/** Rate of change, by central differences, one-sided at the ends. */
export function slopeOf(time: Float64Array, values: Float64Array): Float64Array {
  const last = values.length - 1
  return values.map((_, k) => {
    const [a, b] = [Math.max(0, k - 1), Math.min(last, k + 1)]
    return b > a ? (values[b]! - values[a]!) / (time[b]! - time[a]!) : 0
  })
}

/** So many instants, `step` apart, from 0 on. */
export const ticks = (count: number, step: number) => new Float64Array(count).map((_, k) => k * step)

/** Step between rows: the median of all [s]. */
export function stepOf(time: Float64Array): number {
  const steps = time.subarray(1).map((t, k) => t - time[k]!)
  steps.sort()
  return steps[steps.length >> 1] ?? Number.NaN
}
