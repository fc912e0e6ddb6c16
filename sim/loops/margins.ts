/**
 * Margins of a sampled loop. The gain margins are exact for a stable loop: a closed pole can cross the unit circle only where
 * k·L(e^(jωT)) = −1, so the nearest k above and below 1 bound the gains that stay stable.
 */
import type { FrequencyResponse } from './response.ts'

export interface Margins {
  /** Highest frequency at which |L| falls through 1 [rad/s], and all at which it passes 1. */
  crossover: number | null
  crossings: number[]
  /** Least phase to a crossing's −180° [deg] and its frequency [rad/s]; negative where phase lead would upset the loop. */
  phaseMargin: number | null
  phaseMarginFrequency: number | null
  /** Dead time that the loop bears on top [s]. */
  delayMargin: number | null
  /** Factor by which the gain may rise, and may fall (below 1, where the loop is conditionally stable) [dB]; null: without bound. */
  gainMargin: number | null
  gainMarginFrequency: number | null
  lowerGainMargin: number | null
  /** Largest |1/(1 + L)|, its frequency [rad/s], and its inverse: the least distance of L from −1. */
  peakSensitivity: number
  peakSensitivityFrequency: number
  modulusMargin: number
  /**
   * Highest frequency at which |L/(1 + L)| falls to 3 dB below its value at low frequency [rad/s], and its peak over that value [dB]; no
   * bandwidth without a crossover.
   */
  bandwidth: number | null
  peaking: number
}

const DEGREES = 180 / Math.PI

/** Root of f between two angles at which its signs differ, by bisection with the secant's help (Illinois). */
function root(f: (angle: number) => number, low: number, high: number): number {
  let [a, b, fa, fb] = [low, high, f(low), f(high)]
  for (let n = 0; n < 60 && b - a > 1e-13 * b; n++) {
    const middle = n % 3 === 2 ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa)
    const fm = f(middle)
    if (fm === 0) return middle
    if (fm > 0 === fb > 0) {
      ;[b, fb] = [middle, fm]
      fa /= 2
    } else {
      ;[a, fa] = [middle, fm]
      fb /= 2
    }
  }
  return (a + b) / 2
}

/** Largest value of f near the middle of three angles, by golden section. */
function peak(f: (angle: number) => number, low: number, high: number): { angle: number; value: number } {
  const ratio = (Math.sqrt(5) - 1) / 2
  let [a, b] = [low, high]
  let c = b - ratio * (b - a)
  let d = a + ratio * (b - a)
  let [fc, fd] = [f(c), f(d)]
  for (let n = 0; n < 40 && b - a > 1e-9 * b; n++) {
    if (fc > fd) {
      ;[b, d, fd] = [d, c, fc]
      c = b - ratio * (b - a)
      fc = f(c)
    } else {
      ;[a, c, fc] = [c, d, fd]
      d = a + ratio * (b - a)
      fd = f(d)
    }
  }
  return fc > fd ? { angle: c, value: fc } : { angle: d, value: fd }
}

/** `angles` rise, to π for a sampled loop, and are close enough together to tell every crossing. */
export function marginsOf(response: FrequencyResponse, angles: Float64Array, period: number): Margins {
  const read =
    <T>(value: () => T) =>
    (angle: number) => {
      response.at(angle)
      return value()
    }
  const logGain = read(() => Math.log(response.gain))
  const imaginary = read(() => response.im)
  const real = read(() => response.re)
  const sensitivity = read(() => 1 / response.returned)
  const tracking = read(() => response.gain / response.returned)

  const n = angles.length
  const gain = new Float64Array(n)
  const im = new Float64Array(n)
  const re = new Float64Array(n)
  const s = new Float64Array(n)
  const t = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    response.at(angles[i]!)
    gain[i] = response.gain
    im[i] = response.im
    re[i] = response.re
    s[i] = 1 / response.returned
    t[i] = gain[i]! * s[i]!
  }

  let crossover: number | null = null
  const crossings: number[] = []
  let phase = { margin: Number.POSITIVE_INFINITY, angle: 0 }
  let delay = Number.POSITIVE_INFINITY
  let upper = { factor: Number.POSITIVE_INFINITY, angle: 0 }
  let lower = 0
  const meets = (angle: number, at: number) => {
    if (!(at < 0)) return
    const factor = -1 / at
    if (factor > 1 && factor < upper.factor) upper = { factor, angle }
    else if (factor < 1 && factor > lower) lower = factor
  }
  for (let i = 1; i < n; i++) {
    const [low, high] = [angles[i - 1]!, angles[i]!]
    if (gain[i - 1]! > 1 !== gain[i]! > 1) {
      const angle = root(logGain, low, high)
      crossings.push(angle / period)
      if (gain[i]! <= 1) crossover = angle / period
      response.at(angle)
      const behind = Math.atan2(-response.im, -response.re) // angle of L less −180°, within ±180°
      if (Math.abs(behind) < Math.abs(phase.margin)) phase = { margin: behind, angle }
      delay = Math.min(delay, (behind > 0 ? behind : behind + 2 * Math.PI) / (angle / period))
    }
    if (im[i - 1]! > 0 !== im[i]! > 0 && (re[i - 1]! < 0 || re[i]! < 0) && i < n - 1) {
      const angle = root(imaginary, low, high)
      meets(angle, real(angle))
    }
  }
  // At the Nyquist frequency the loop gain of a sampled loop is real.
  if (Math.abs(im[n - 1]!) <= 1e-9 * gain[n - 1]!) meets(angles[n - 1]!, re[n - 1]!)

  const most = summit(s, angles, sensitivity)
  const start = t[0]!
  const top = summit(t, angles, tracking)
  const peaking = Math.max(0, 20 * Math.log10(top.value / start))
  let bandwidth: number | null = null
  const floor = start * Math.SQRT1_2
  for (let i = n - 1; i > 0 && bandwidth === null && crossover !== null; i--) {
    if (t[i]! < floor && t[i - 1]! >= floor)
      bandwidth = root((angle) => tracking(angle) - floor, angles[i - 1]!, angles[i]!) / period
  }
  return {
    crossover,
    crossings,
    phaseMargin: crossings.length > 0 ? phase.margin * DEGREES : null,
    phaseMarginFrequency: crossings.length > 0 ? phase.angle / period : null,
    delayMargin: crossings.length > 0 ? delay : null,
    gainMargin: Number.isFinite(upper.factor) ? 20 * Math.log10(upper.factor) : null,
    gainMarginFrequency: Number.isFinite(upper.factor) ? upper.angle / period : null,
    lowerGainMargin: lower > 0 ? 20 * Math.log10(lower) : null,
    peakSensitivity: most.value,
    peakSensitivityFrequency: most.angle / period,
    modulusMargin: 1 / most.value,
    bandwidth,
    peaking,
  }
}

/** The largest of the values, refined between its neighbours. */
function summit(values: Float64Array, angles: Float64Array, f: (angle: number) => number) {
  let index = 0
  for (let i = 1; i < values.length; i++) if (values[i]! > values[index]!) index = i
  const known = { angle: angles[index]!, value: values[index]! }
  if (index === 0 || index === values.length - 1) return known
  const found = peak(f, angles[index - 1]!, angles[index + 1]!)
  return found.value > known.value ? found : known
}
