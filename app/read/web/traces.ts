/** The columns of a web, which the store keeps as those of a grip. */
import type { Traces } from '../../../sim/index.ts'

type Name = 'time' | 'tension' | 'rollTension' | 'lineSpeed' | 'rimSpeed' | 'slack' | 'radius' | 'travel' | 'current'

export const webTraces = (traces: Traces) => traces as unknown as Record<Name, Float64Array>

const ways = new WeakMap<Float64Array, Float64Array>()

/** Length that the line has handed out by each row [m]: its speed summed by trapezoids. */
export function lineWay(traces: Traces): Float64Array {
  const { time, lineSpeed } = webTraces(traces)
  const known = ways.get(lineSpeed)
  if (known) return known
  const way = new Float64Array(time.length)
  for (let row = 1; row < time.length; row++)
    way[row] = way[row - 1]! + (time[row]! - time[row - 1]!) * 0.5 * (lineSpeed[row]! + lineSpeed[row - 1]!)
  ways.set(lineSpeed, way)
  return way
}
