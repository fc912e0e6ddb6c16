/**
 * The special functions of scatter, from a library in plain JavaScript with logarithm and exponential of its own: the same to the last
 * bit in every engine, which the engines' own Math.log and Math.exp are not.
 */
import beta from '@stdlib/stats-base-dists-beta-quantile'
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'
import normal from '@stdlib/stats-base-dists-normal-quantile'
import student from '@stdlib/stats-base-dists-t-quantile'

/** z with the share `u` of a standard normal law below it; ∓Infinity at 0 and 1. */
export const normalQuantile = (u: number): number => normal(u, 0, 1)

/** Share of a standard normal law below `z`. */
export const normalShare = (z: number): number => normalBelow(z, 0, 1)

/** Value with the share `u` of Student's law of `freedom` degrees below it. */
export const studentQuantile = (u: number, freedom: number): number => student(u, freedom)

/** Value with the share `u` of the beta law of a, b > 0 below it. */
export const betaQuantile = (u: number, a: number, b: number): number => beta(u, a, b)
