/**
 * Elementary functions from + − × ÷ alone, so that a run is the same to the last bit in every engine; the engines' own Math.sin
 * and Math.cos differ in the last place.
 */

const TWO_PI: f64 = 6.283185307179586
const PER_TURN: f64 = 1 / TWO_PI
const LN2: f64 = Math.LN2
const PER_LN2: f64 = 1 / LN2

// The coefficients of the series stand as quotients that the compiler works out, as a division takes longer than the rest of a term. Every
// second term of a series is summed apart, of the exponential's every fourth, so that the sums do not wait for each other.

/** sin(2π·turns), absolute error below 1e-13: the angle is folded into a quarter turn, then summed as a Taylor series up to x¹⁹. */
export function sineOfTurns(turns: f64): f64 {
  let u: f64 = turns - Math.floor(turns + 0.5) // −0.5 … 0.5
  if (u > 0.25) u = 0.5 - u
  else if (u < -0.25) u = -0.5 - u
  const x: f64 = TWO_PI * u
  const x2: f64 = x * x
  const x4: f64 = x2 * x2
  const even: f64 = 1 + x4 * (1 / 120 + x4 * (1 / 362880 + x4 * (1 / 6227020800 + x4 * (1 / 355687428096000))))
  const odd: f64 =
    1 / 6 + x4 * (1 / 5040 + x4 * (1 / 39916800 + x4 * (1 / 1307674368000 + x4 * (1 / 121645100408832000))))
  return x * (even - x2 * odd)
}

/** sin(angle) and cos(angle), angle in rad. */
export function sine(angle: f64): f64 {
  return sineOfTurns(angle * PER_TURN)
}

export function cosine(angle: f64): f64 {
  return sineOfTurns(angle * PER_TURN + 0.25)
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
  const z4: f64 = z2 * z2
  const even: f64 = 1 + z4 * (1 / 5 + z4 * (1 / 9 + z4 * (1 / 13 + z4 * (1 / 17 + z4 * (1 / 21 + z4 * (1 / 25))))))
  const odd: f64 = 1 / 3 + z4 * (1 / 7 + z4 * (1 / 11 + z4 * (1 / 15 + z4 * (1 / 19 + z4 * (1 / 23)))))
  return k * LN2 + 2 * z * (even + z2 * odd)
}

/** e^x as 2^k·e^r with r within ±ln2/2 summed as a Taylor series up to r¹⁴, relative error below 1e-13; 0 below e^−700. */
export function exponential(x: f64): f64 {
  if (x < -700) return 0
  if (x > 710) return Infinity
  const k: f64 = Math.floor(x * PER_LN2 + 0.5)
  const r: f64 = x - k * LN2
  const r2: f64 = r * r
  const r4: f64 = r2 * r2
  const ones: f64 = 1 + r4 * (1 / 24 + r4 * (1 / 40320 + r4 * (1 / 479001600)))
  const squares: f64 = 1 / 2 + r4 * (1 / 720 + r4 * (1 / 3628800 + r4 * (1 / 87178291200)))
  const linear: f64 = 1 + r4 * (1 / 120 + r4 * (1 / 362880 + r4 * (1 / 6227020800)))
  const cubes: f64 = 1 / 6 + r4 * (1 / 5040 + r4 * (1 / 39916800))
  let sum: f64 = ones + r2 * squares + r * (linear + r2 * cubes)
  for (let n: f64 = 0; n < k; n++) sum *= 2
  for (let n: f64 = 0; n > k; n--) sum *= 0.5
  return sum
}

/** base^exponent for base ≥ 0 of ordinary size, relative error below 1e-12; not finite where the base is not. */
export function power(base: f64, exponent: f64): f64 {
  return exponential(exponent * logarithm(base))
}
