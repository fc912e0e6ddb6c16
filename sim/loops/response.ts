import type { Complex } from './complex.ts'

/** A loop gain that can be asked for at any angle ω·period [rad]. */
export interface FrequencyResponse {
  at(angle: number): void
  /** L at the last angle asked for, |L|, and |1 + L|. */
  readonly re: number
  readonly im: number
  readonly gain: number
  readonly returned: number
}

/**
 * Frequency response of a loop from its poles: by the matrix determinant lemma 1 + L(z) = det(zI − A + BC)/det(zI − A), the
 * product over the closed poles over that of the open ones (Skogestad and Postlethwaite, Multivariable Feedback Control, 2nd ed.,
 * ch. 4, for det(I + L) as the ratio of the two characteristic polynomials; from memory). A point costs two multiplications a state.
 */
export class LoopResponse implements FrequencyResponse {
  re = 0
  im = 0
  returnRe = 1
  returnIm = 0
  private readonly closed: Float64Array
  private readonly open: Float64Array

  constructor(closed: readonly Complex[], open: readonly Complex[]) {
    this.closed = flat(closed)
    this.open = flat(open)
  }

  /** Sets L at z = e^(j·angle), angle = ω·period in 0 … π. */
  at(angle: number): void {
    const half = Math.sin(angle / 2)
    const x = -2 * half * half // z − 1, without the cancellation of cos − 1
    const y = Math.sin(angle)
    let re = 1
    let im = 0
    const { closed, open } = this
    for (let i = 0; i < closed.length; i += 2) {
      const a = x - closed[i]!
      const b = y - closed[i + 1]!
      const c = x - open[i]!
      const d = y - open[i + 1]!
      const size = c * c + d * d
      const ratioRe = (a * c + b * d) / size
      const ratioIm = (b * c - a * d) / size
      const next = re * ratioRe - im * ratioIm
      im = re * ratioIm + im * ratioRe
      re = next
    }
    this.returnRe = re
    this.returnIm = im
    this.re = re - 1
    this.im = im
  }

  get gain(): number {
    return Math.sqrt(this.re * this.re + this.im * this.im)
  }

  get returned(): number {
    return Math.sqrt(this.returnRe * this.returnRe + this.returnIm * this.returnIm)
  }
}

/** Poles less 1, near-equal ones of both lists at like places, so that their ratios neither overflow nor cancel. */
function flat(poles: readonly Complex[]): Float64Array {
  const sorted = [...poles].sort((p, q) => p.re - q.re || p.im - q.im)
  const made = new Float64Array(2 * poles.length)
  for (const [i, { re, im }] of sorted.entries()) {
    made[2 * i] = re - 1
    made[2 * i + 1] = im
  }
  return made
}

const DEGREES = 180 / Math.PI

/** Curves over one list of frequencies. */
export interface Curves {
  /** ω [rad/s], rising to the loop's Nyquist frequency. */
  frequency: Float64Array
  /** |L| [dB] and its unwrapped phase [deg]; the Nyquist curve is (re, im). */
  magnitude: Float64Array
  phase: Float64Array
  re: Float64Array
  im: Float64Array
  /** |1/(1 + L)| and |L/(1 + L)| [dB]. */
  sensitivity: Float64Array
  complementary: Float64Array
}

const decibels = (gain: number) => 20 * Math.log10(gain)

export function curvesOf(response: FrequencyResponse, angles: Float64Array, period: number): Curves {
  const n = angles.length
  const made: Curves = {
    frequency: new Float64Array(n),
    magnitude: new Float64Array(n),
    phase: new Float64Array(n),
    re: new Float64Array(n),
    im: new Float64Array(n),
    sensitivity: new Float64Array(n),
    complementary: new Float64Array(n),
  }
  let expected = startPhase(response, angles[0]!)
  for (let i = 0; i < n; i++) {
    response.at(angles[i]!)
    const { gain, returned } = response
    const raw = Math.atan2(response.im, response.re) * DEGREES
    const phase = raw + 360 * Math.round((expected - raw) / 360)
    expected = phase
    made.frequency[i] = angles[i]! / period
    made.magnitude[i] = decibels(gain)
    made.phase[i] = phase
    made.re[i] = response.re
    made.im[i] = response.im
    made.sensitivity[i] = -decibels(returned)
    made.complementary[i] = decibels(gain / returned)
  }
  return made
}

/** Phase that goes with the slope of the gain [deg]: −90° for each 20 dB a decade that it falls. */
function startPhase(response: FrequencyResponse, angle: number): number {
  response.at(angle / 2)
  const before = response.gain
  response.at(angle)
  return -90 * Math.round(Math.log2(before / response.gain)) || 0
}
