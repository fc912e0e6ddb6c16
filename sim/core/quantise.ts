/** Rounds to the nearest step of an encoder or converter; a step of 0 leaves the value. */
export function quantise(value: f64, step: f64): f64 {
  return step > 0 ? Math.floor(value / step + 0.5) * step : value
}
