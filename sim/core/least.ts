/** More than what rounding may make of a product. */
const ROOM: f64 = 1 + 1e-9

/** The smaller of `least` and value/over, none of them negative; divides only where that may be the smaller one. */
export function leastOf(least: f64, value: f64, over: f64): f64 {
  return value > least * over * ROOM ? least : Math.min(least, value / over)
}

/** The smaller of `least` and √(value/over) likewise; none of them so small that its square is lost. */
export function leastRoot(least: f64, value: f64, over: f64): f64 {
  return value > least * least * over * ROOM ? least : Math.min(least, Math.sqrt(value / over))
}
