/**
 * Below this a decay counts as over, in whatever unit: one that goes on for ever ends among the subnormal numbers of IEEE 754, stays
 * there, and is what a processor is slow with.
 */
export const RESTING: f64 = 1e-290

/** What is left of a decay: 0 where it is over. */
// @inline
export function fading(value: f64): f64 {
  return Math.abs(value) < RESTING ? 0 : value
}
