/**
 * Elementary functions from + − × ÷ alone, so that a run is the same to the last bit in every engine; the engines' own Math.sin
 * and Math.cos differ in the last place.
 */

export const TWO_PI: f64 = 6.283185307179586
const LN2: f64 = Math.LN2

/** sin(2π·turns), absolute error below 1e-13: the angle is folded into a quarter turn, then summed as a Taylor series. */
export function sineOfTurns(turns: f64): f64 {
  let u: f64 = turns - Math.floor(turns + 0.5) // −0.5 … 0.5
  if (u > 0.25) u = 0.5 - u
  else if (u < -0.25) u = -0.5 - u
  const x: f64 = TWO_PI * u
  const x2: f64 = x * x
  let sum: f64 = 1
  for (let n: f64 = 18; n >= 2; n -= 2) sum = 1 - (sum * x2) / (n * (n + 1))
  return x * sum
}

/** cos(angle), angle in rad. */
export function cosine(angle: f64): f64 {
  return sineOfTurns(angle / TWO_PI + 0.25)
}

/** ln(x) for x ≥ 0, relative error below 1e-13: x = 2^k·m, ln m as the series of artanh. What is not finite is its own logarithm. */
function logarithm(x: f64): f64 {
  if (!(x < Infinity)) return x
  if (x === 0) return -Infinity
  let m: f64 = x
  let k: f64 = 0
  for (; m > 1.5; k++) m *= 0.5
  for (; m < 0.75; k--) m *= 2
  const z: f64 = (m - 1) / (m + 1)
  const z2: f64 = z * z
  let sum: f64 = 0
  for (let n: f64 = 25; n >= 1; n -= 2) sum = sum * z2 + 1 / n
  return k * LN2 + 2 * z * sum
}

/** e^x as 2^k·e^r with r within ±ln2/2 summed as a Taylor series; 0 below e^−700. */
export function exponential(x: f64): f64 {
  if (x < -700) return 0
  if (x > 710) return Infinity
  const k: f64 = Math.floor(x / LN2 + 0.5)
  const r: f64 = x - k * LN2
  let sum: f64 = 1
  for (let n: f64 = 16; n >= 1; n--) sum = 1 + (sum * r) / n
  for (let n: f64 = 0; n < k; n++) sum *= 2
  for (let n: f64 = 0; n > k; n--) sum *= 0.5
  return sum
}

/** base^exponent for base ≥ 0 of ordinary size, relative error below 1e-12; not finite where the base is not. */
export function power(base: f64, exponent: f64): f64 {
  return exponential(exponent * logarithm(base))
}
