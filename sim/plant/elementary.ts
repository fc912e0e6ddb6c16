/**
 * Elementary functions from + − × ÷ alone, so that a run is the same to the last bit in every JavaScript engine;
 * the engines' own Math.sin and Math.cos differ in the last place.
 */

const TWO_PI = 6.283185307179586

/** sin(2π·turns), absolute error below 1e-13: the angle is folded into a quarter turn, then summed as a Taylor series. */
export function sineOfTurns(turns: number): number {
  let u = turns - Math.floor(turns + 0.5) // −0.5 … 0.5
  if (u > 0.25) u = 0.5 - u
  else if (u < -0.25) u = -0.5 - u
  const x = TWO_PI * u
  const x2 = x * x
  let sum = 1
  for (let n = 18; n >= 2; n -= 2) sum = 1 - (sum * x2) / (n * (n + 1))
  return x * sum
}

/** cos(angle), angle in rad. */
export const cosine = (angle: number) => sineOfTurns(angle / TWO_PI + 0.25)
