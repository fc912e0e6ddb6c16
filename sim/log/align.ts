/** Where in a log things begin, and by how much one signal runs after another. */
import { slopeOf } from './grid.ts'

/** What counts as moving or pressing, over the scatter of the first rows, and rows that must agree. */
const OVER = 6
const FIRST = 20
const AGREE = 3
/** And over the range of the signal, where the first rows do not scatter at all. */
const LEAST = 0.002

/** First row from which a signal has left the value that it starts with, clearly above its scatter there; −1: it never does. */
export function startOf(values: Float64Array): number {
  const first = values.subarray(0, Math.min(FIRST, values.length))
  const mean = first.reduce((sum, each) => sum + each, 0) / first.length
  const scatter = Math.sqrt(first.reduce((sum, each) => sum + (each - mean) ** 2, 0) / first.length)
  const range = values.reduce((most, each) => Math.max(most, Math.abs(each - mean)), 0)
  const least = Math.max(OVER * scatter, LEAST * range)
  let run = 0
  for (let k = 0; k < values.length; k++) {
    run = Math.abs(values[k]! - mean) > least ? run + 1 : 0
    if (run === AGREE) return k - AGREE + 1
  }
  return -1
}

/**
 * By how many rows `b` runs after `a`, at most `most` either way: the lag at which they correlate best, refined by a parabola through
 * three points. Null: they do not correlate.
 */
export function lagOf(a: Float64Array, b: Float64Array, most: number): number | null {
  const at = (lag: number) => correlationAt(a, b, lag)
  let best = 0
  let highest = at(0)
  for (let lag = -most; lag <= most; lag++) {
    const value = at(lag)
    if (value > highest) [best, highest] = [lag, value]
  }
  if (!(highest > 0)) return null
  const [before, after] = [at(best - 1), at(best + 1)]
  const bend = before - 2 * highest + after
  return bend < 0 ? best + (before - after) / (2 * bend) : best
}

/** Delay [s] of `later` after `signal`, of their rates of change, so that offsets and slow drifts do not count. */
export function delayOf(time: Float64Array, signal: Float64Array, later: Float64Array, most: number): number | null {
  const step = (time.at(-1)! - time[0]!) / (time.length - 1)
  const lag = lagOf(slopeOf(time, signal), slopeOf(time, later), Math.max(1, Math.round(most / step)))
  return lag === null ? null : lag * step
}

/** Of the rows that both have where `b` is shifted back by `lag`, about their own means; 0 where one never changes. */
function correlationAt(a: Float64Array, b: Float64Array, lag: number): number {
  const [from, to] = [Math.max(0, -lag), Math.min(a.length, b.length - lag)]
  const n = to - from
  if (n < 3) return 0
  let [sa, sb, aa, bb, ab] = [0, 0, 0, 0, 0]
  const [a0, b0] = [a[from]!, b[from + lag]!]
  for (let k = from; k < to; k++) {
    const [x, y] = [a[k]! - a0, b[k + lag]! - b0]
    sa += x
    sb += y
    aa += x * x
    bb += y * y
    ab += x * y
  }
  const spread = Math.sqrt(Math.max(0, aa - (sa * sa) / n) * Math.max(0, bb - (sb * sb) / n))
  return spread > 0 ? (ab - (sa * sb) / n) / spread : 0
}
