/**
 * What is left of a log, over frequency: the amplitude spectrum by averaged, overlapping, windowed pieces (P. D. Welch, The Use of Fast
 * Fourier Transform for the Estimation of Power Spectra, IEEE Transactions on Audio and Electroacoustics 15(2), 1967; Hann's window).
 */
import FFT from 'fft.js'
import { filled, interpolated, ticks } from './grid.ts'

export interface Spectrum {
  /** [Hz], rising, the first above 0. */
  frequency: Float64Array
  /** Of the sine that would look like this, in the unit of the signal. */
  amplitude: Float64Array
}

/** Rows of a piece, rows by which the next one lies further on at least, and most pieces that are taken. */
const PIECE = 512
const HOP = PIECE / 2
const MOST = 64

/** Signals of fewer rows than this have no spectrum worth drawing. */
const FEWEST = 64

/** Null where there are too few rows, or no values. Rows may come unevenly: they are put on even instants. */
export function spectrumOf(time: Float64Array, values: Float64Array): Spectrum | null {
  const rows = time.length
  const last = rows - 1
  if (rows < FEWEST || !values.some(Number.isFinite)) return null
  const step = (time[last]! - time[0]!) / last
  const start = time[0]!
  const even = interpolated(
    time,
    filled(time, values),
    ticks(rows, step).map((t) => t + start),
  )
  const length = Math.min(PIECE, 2 ** Math.floor(Math.log2(rows)))
  const fft = new FFT(length)
  const pieces = Math.min(MOST, 1 + Math.max(0, Math.floor((rows - length) / HOP)))
  const apart = pieces > 1 ? (rows - length) / (pieces - 1) : 0
  const power = new Float64Array(length / 2)
  for (let p = 0; p < pieces; p++) {
    const from = Math.floor(p * apart)
    addPower(even.subarray(from, from + length), fft, power)
  }
  return {
    frequency: power.map((_, k) => (k + 1) / (length * step)),
    amplitude: power.map((sum) => Math.sqrt(sum / pieces)),
  }
}

/** A piece of a signal about its mean, under Hann's window. */
export function windowed(piece: Float64Array): Float64Array {
  const mean = piece.reduce((sum, each) => sum + each, 0) / piece.length
  return piece.map((each, k) => (each - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * k) / piece.length)))
}

/** Adds the squared amplitudes of one piece, about its mean, at 1, 2, … swings within it. */
function addPower(piece: Float64Array, fft: FFT, power: Float64Array): void {
  const n = piece.length
  const shown = fft.createComplexArray()
  fft.realTransform(shown, windowed(piece))
  for (let k = 1; k <= power.length; k++) {
    // The window lets half through; the last frequency has no twin below zero.
    const amplitude = Math.hypot(shown[2 * k]!, shown[2 * k + 1]!) * (k === n / 2 ? 2 / n : 4 / n)
    power[k - 1]! += amplitude * amplitude
  }
}
