/**
 * Frequency response from a log of noise or a chirp: Welch's averaged blocks (1967), Hann's window, half overlapping; H₁ = S_xy/S_xx and
 * the coherence γ² = |S_xy|²/(S_xx S_yy), with the spread σ(|H|)/|H| = σ(phase) = √((1 − γ²)/(2 n γ²)) of n separate blocks (Bendat and
 * Piersol, Random Data). The coherence of unrelated signals lies below 1 − 0.05^(1/(n − 1)) in 95 of 100 cases.
 */
import FFT from 'fft.js'
import { NoFit } from '../facts.ts'
import { interpolated, stepOf, ticks } from '../grid.ts'
import { windowed } from '../spectrum.ts'

export interface MeasuredResponse {
  /** [rad/s], rising. */
  frequency: Float64Array
  re: Float64Array
  im: Float64Array
  /** Null where nobody knows it. */
  coherence: Float64Array | null
  /** Separate blocks that were averaged, 0 where nobody knows it. */
  blocks: number
  /** What drives the axis: the current that flows, else the one that is wanted, with the current loop between them. */
  input?: ResponseInput
}

export type ResponseInput = 'command' | 'current'

/** Blocks that are wanted where the log is long enough, and the shortest and the longest block. */
const WANTED_BLOCKS = 16
const SHORTEST = 64
const LONGEST = 4096
/** Half overlapping Hann blocks count as this share of as many separate ones (Welch 1967). */
const SEPARATE = 0.72

/** Time [s] rising; `block` is the length in rows, a power of two. Throws a NoFit where the log is too short for two blocks. */
export function responseOf(
  time: Float64Array,
  input: Float64Array,
  output: Float64Array,
  block = blockFor(time.length),
): MeasuredResponse {
  const step = stepOf(time)
  const at = ticks(Math.floor((time.at(-1)! - time[0]!) / step) + 1, step).map((t) => t + time[0]!)
  if (!(block >= SHORTEST) || at.length < 1.5 * block)
    throw new NoFit({ kind: 'short-response', rows: at.length, least: 1.5 * SHORTEST })
  const [x, y] = [interpolated(time, input, at), interpolated(time, output, at)]
  const half = block / 2
  const [xx, yy, re, im] = [0, 0, 0, 0].map(() => new Float64Array(half + 1))
  const fft = new FFT(block)
  const [fx, fy] = [fft.createComplexArray(), fft.createComplexArray()]
  let count = 0
  for (let from = 0; from + block <= at.length; from += half, count++) {
    fft.realTransform(fx, windowed(x.subarray(from, from + block)))
    fft.realTransform(fy, windowed(y.subarray(from, from + block)))
    for (let k = 0; k <= half; k++) {
      const [a, b, c, d] = [fx[2 * k]!, fx[2 * k + 1]!, fy[2 * k]!, fy[2 * k + 1]!]
      xx![k]! += a * a + b * b
      yy![k]! += c * c + d * d
      re![k]! += a * c + b * d
      im![k]! += a * d - b * c
    }
  }
  const bins = Array.from({ length: half - 1 }, (_, k) => k + 1)
  const column = (value: (k: number) => number) => Float64Array.from(bins, value)
  return {
    frequency: column((k) => (2 * Math.PI * k) / (block * step)),
    re: column((k) => re![k]! / xx![k]!),
    im: column((k) => im![k]! / xx![k]!),
    coherence: column((k) => (re![k]! ** 2 + im![k]! ** 2) / (xx![k]! * yy![k]!)),
    blocks: count === 1 ? 1 : Math.max(1, SEPARATE * count),
  }
}

/** Longest power of two that gives the blocks that are wanted; of a log with rows to spare more blocks, not longer ones. */
function blockFor(rows: number): number {
  const most = (2 * rows) / (WANTED_BLOCKS + 1)
  return Math.min(LONGEST, Math.max(SHORTEST, 2 ** Math.floor(Math.log2(Math.max(1, most)))))
}

/** Coherence that unrelated signals stay below in 95 of 100 cases; 1 for a single block, which always shows 1. */
export const unrelatedBelow = (blocks: number) => (blocks > 1 ? 1 - 0.05 ** (1 / (blocks - 1)) : 1)

/** Relative standard deviation of |H|, and of the phase in rad; Infinity without coherence. */
export const spreadOf = (coherence: number, blocks: number) =>
  coherence > 0 ? Math.sqrt(Math.max(0, 1 - coherence) / (2 * blocks * coherence)) : Number.POSITIVE_INFINITY
