/** The columns of a press, which the store keeps as those of a grip. */
import type { Traces } from '../../../sim/index.ts'

type Name = 'time' | 'force' | 'depth' | 'jointForce' | 'shoulderForce' | 'travel' | 'current'

export const tracesOf = (traces: Traces) => traces as unknown as Record<Name, Float64Array>

/** The last row at or before a time; 0 before all. */
export function rowAt(times: Float64Array, time: number): number {
  let [low, high] = [0, Math.max(0, times.length - 1)]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (times[middle]! <= time) low = middle
    else high = middle - 1
  }
  return low
}
