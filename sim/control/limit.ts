/** The side on which `value` leaves ±limit; 0 inside, and 0 for NaN. */
export function saturation(value: f64, limit: f64): f64 {
  return value > limit ? 1 : value < -limit ? -1 : 0
}

/** `value` held within ±limit, `side` being where it leaves them; NaN stays NaN, so that a run that left the numbers shows it. */
export function held(value: f64, side: f64, limit: f64): f64 {
  return side === 0 ? value : side * limit
}
