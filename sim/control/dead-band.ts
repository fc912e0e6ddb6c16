/**
 * Dead band with jump: zero inside ±halfWidth (the edges included), unchanged outside. The loop gain outside is therefore
 * the full one, and the output jumps by halfWidth at the edge; the dead *zone* would subtract halfWidth there instead.
 */
export function deadBand(value: number, halfWidth: number): number {
  return Math.abs(value) <= halfWidth ? 0 : value
}
