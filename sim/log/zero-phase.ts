/**
 * A low pass without phase: Butterworth of fourth order, made digital by the bilinear transformation with its corner where it is
 * asked for (Oppenheim and Schafer, Discrete-Time Signal Processing), run forwards and backwards, so that its gain counts twice:
 * 1/(1 + (tan(ω T/2)/tan(ω_c T/2))⁸). Both ends are carried on by the signal turned about its end, as far as the filter remembers.
 */

/** Poles of the fourth order in two pairs: twice the cosine of their angle from the real axis. */
const PAIRS = [2 * Math.cos(Math.PI / 8), 2 * Math.cos((3 * Math.PI) / 8)]
/** What is carried on at each end, in periods of the corner. */
const CARRIED = 6

/** Evenly spaced `values`; `corner` in shares of the sample rate, above 0 and below a half, where each pass has −3 dB. Throws a RangeError else. */
export function zeroPhase(values: Float64Array, corner: number): Float64Array {
  if (!(corner > 0 && corner < 0.5))
    throw new RangeError(`corner: given ${corner}, allowed above 0 and below 0.5 of the sample rate`)
  const length = values.length
  if (length < 2) return values.slice()
  const more = Math.min(length - 1, Math.ceil(CARRIED / corner))
  const all = new Float64Array(length + 2 * more)
  all.set(values, more)
  for (let k = 1; k <= more; k++) {
    all[more - k] = 2 * values[0]! - values[k]!
    all[more + length - 1 + k] = 2 * values[length - 1]! - values[length - 1 - k]!
  }
  for (const _ of ['forwards', 'backwards']) {
    for (const pair of PAIRS) pass(all, corner, pair)
    all.reverse()
  }
  return all.slice(more, more + length)
}

/** One pair of poles, in place, at rest in the first value. */
function pass(values: Float64Array, corner: number, pair: number): void {
  const t = Math.tan(Math.PI * corner)
  const a0 = 1 + pair * t + t * t
  const [b, a1, a2] = [(t * t) / a0, (2 * (t * t - 1)) / a0, (1 - pair * t + t * t) / a0]
  const first = values[0]!
  let [x1, x2, y1, y2] = [first, first, first, first]
  for (let k = 0; k < values.length; k++) {
    const x = values[k]!
    const y = b * (x + 2 * x1 + x2) - a1 * y1 - a2 * y2
    x2 = x1
    x1 = x
    y2 = y1
    y1 = y
    values[k] = y
  }
}
