/** Roots and peaks of a function of one angle, and a response read at a whole list of angles. */
import type { FrequencyResponse } from './response.ts'

/** Root of f between two angles at which its signs differ, by bisection with the secant's help (Illinois). */
export function root(f: (angle: number) => number, low: number, high: number): number {
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

export interface Peak {
  angle: number
  value: number
}

/** Largest value of f near the middle of three angles, by golden section. */
export function peak(f: (angle: number) => number, low: number, high: number): Peak {
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

/** The largest of the values, refined between its neighbours. */
export function summit(values: Float64Array, angles: Float64Array, f: (angle: number) => number): Peak {
  let index = 0
  for (let i = 1; i < values.length; i++) if (values[i]! > values[index]!) index = i
  const known = { angle: angles[index]!, value: values[index]! }
  if (index === 0 || index === values.length - 1) return known
  const found = peak(f, angles[index - 1]!, angles[index + 1]!)
  return found.value > known.value ? found : known
}

/** A response at every angle of a list: L, |L|, |1/(1 + L)| and |L/(1 + L)|. */
export interface Readings {
  angles: Float64Array
  re: Float64Array
  im: Float64Array
  gain: Float64Array
  sensitivity: Float64Array
  tracking: Float64Array
}

export function readingsOf(response: FrequencyResponse, angles: Float64Array): Readings {
  const n = angles.length
  const [re, im, gain] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
  const [sensitivity, tracking] = [new Float64Array(n), new Float64Array(n)]
  for (let i = 0; i < n; i++) {
    response.at(angles[i]!)
    re[i] = response.re
    im[i] = response.im
    gain[i] = response.gain
    sensitivity[i] = 1 / response.returned
    tracking[i] = response.gain / response.returned
  }
  return { angles, re, im, gain, sensitivity, tracking }
}
