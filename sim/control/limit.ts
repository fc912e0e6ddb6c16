/** The side on which `value` leaves ±limit; 0 inside, and 0 for NaN. */
export function saturation(value: number, limit: number): -1 | 0 | 1 {
  return value > limit ? 1 : value < -limit ? -1 : 0
}

/** `value` held within ±limit; NaN stays NaN, so that a run that left the numbers shows it. */
export function clamp(value: number, limit: number): number {
  return Math.max(-limit, Math.min(limit, value))
}
