/**
 * Dead band with jump: zero inside ±halfWidth (the edges included), unchanged outside. The loop gain outside is therefore
 * the full one, and the output jumps by halfWidth at the edge; the dead *zone* would subtract halfWidth there instead.
 */
export function deadBand(value: f64, halfWidth: f64): f64 {
  return Math.abs(value) <= halfWidth ? 0 : value
}
