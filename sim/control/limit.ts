/** The side on which `value` leaves ±limit; 0 inside, and 0 for NaN. */
export function saturation(value: f64, limit: f64): f64 {
  return value > limit ? 1 : value < -limit ? -1 : 0
}

/** `value` held within ±limit; NaN stays NaN, so that a run that left the numbers shows it. */
export function clamp(value: f64, limit: f64): f64 {
  return Math.max(-limit, Math.min(limit, value))
}
