/** Fourier coefficients and ripple of sampled signals. */
/** Fourier coefficient of the last `window` values at `cycles` whole cycles in them. */
export function bin(values: readonly number[], window: number, cycles: number): { re: number; im: number } {
  let re = 0
  let im = 0
  const from = values.length - window
  for (let k = 0; k < window; k++) {
    const angle = (2 * Math.PI * cycles * k) / window
    re += values[from + k]! * Math.cos(angle)
    im -= values[from + k]! * Math.sin(angle)
  }
  return { re, im }
}

/** a/b in decibels and degrees. */
export function ratio(a: { re: number; im: number }, b: { re: number; im: number }) {
  const size = b.re * b.re + b.im * b.im
  const re = (a.re * b.re + a.im * b.im) / size
  const im = (a.im * b.re - a.re * b.im) / size
  return { decibels: 10 * Math.log10(re * re + im * im), degrees: (Math.atan2(im, re) * 180) / Math.PI }
}

/** Root mean square of the values about their mean. */
export function ripple(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length)
}
