/**
 * Whether speed and position of a recording go together: which multiple of the way that the speed makes the position moves, and by how
 * long the speed lags, as a filtered one does.
 */
import { channelOf, type Recording } from './log.ts'

export interface Kinship {
  /** Way of the position over that of the speed; 1 where they agree, negative where the signs differ. */
  ratio: number
  /** By which the speed comes after the derivative of the position [s]. */
  lag: number
}

/** Rows that are compared at most, and steps by which the speed is shifted at most. */
const ROWS = 20_000
const SHIFTS = 200
/** Least correlation of two columns that are kin. */
const KIN = 0.9

/** Null where either is missing or of unknown scale, or where they have little to do with each other. */
export function kinshipOf(recording: Recording): Kinship | null {
  const [position, speed] = [channelOf(recording, 'travel'), channelOf(recording, 'speed')]
  if (!position?.column.scale || !speed?.column.scale) return null
  const rows = Math.min(ROWS, recording.rows)
  const derivative = differentiated(position.values.subarray(0, rows), recording.time)
  let best = { correlation: 0, ratio: 0, shift: 0 }
  for (let shift = 0; shift <= Math.min(SHIFTS, rows / 4); shift++) {
    const found = correlated(derivative, speed.values, shift)
    if (Math.abs(found.correlation) > Math.abs(best.correlation) + 1e-6) best = { ...found, shift }
  }
  return Math.abs(best.correlation) < KIN ? null : { ratio: best.ratio, lag: best.shift * recording.step }
}

/** By the rows before and after. */
function differentiated(values: Float64Array, time: Float64Array): Float64Array {
  const out = new Float64Array(values.length).fill(Number.NaN)
  for (let row = 1; row < values.length - 1; row++)
    out[row] = (values[row + 1]! - values[row - 1]!) / (time[row + 1]! - time[row - 1]!)
  return out
}

/** Of `a` and `b` so many rows later, about zero: speeds have no offset; the ratio by least squares. */
function correlated(a: Float64Array, b: Float64Array, shift: number): { correlation: number; ratio: number } {
  let [aa, ab, bb] = [0, 0, 0]
  for (let row = 0; row < a.length - shift; row++) {
    const [x, y] = [a[row]!, b[row + shift]!]
    if (Number.isNaN(x * y)) continue
    aa += x * x
    ab += x * y
    bb += y * y
  }
  return aa > 0 && bb > 0 ? { correlation: ab / Math.sqrt(aa * bb), ratio: ab / bb } : { correlation: 0, ratio: 0 }
}
