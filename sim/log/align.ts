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
  const [x, y] = [centred(a), centred(b)]
  const at = (lag: number) => {
    let sum = 0
    for (let k = Math.max(0, -lag); k < Math.min(x.length, y.length - lag); k++) sum += x[k]! * y[k + lag]!
    return sum
  }
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

function centred(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, each) => sum + each, 0) / values.length
  return values.map((each) => each - mean)
}
