/** Row at or before a time and the fraction of the way to the next one. */
export function rowAt(times: Float64Array, rows: number, time: number): { index: number; fraction: number } {
  if (rows < 2 || !(time > times[0]!)) return { index: 0, fraction: 0 }
  if (time >= times[rows - 1]!) return { index: rows - 1, fraction: 0 }
  let low = 0
  let high = rows - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (times[middle]! <= time) low = middle
    else high = middle
  }
  const span = times[high]! - times[low]!
  return { index: low, fraction: span > 0 ? (time - times[low]!) / span : 0 }
}
