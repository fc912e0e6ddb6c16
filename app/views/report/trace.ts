/** Geometry of the report's small force traces, in units of their drawing. Knows no React. */
import { forceWindow, type Scenario } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import type { ShownUnit } from '../../ui/unit.ts'

export const BOX = { width: 300, height: 102, left: 32, right: 6, top: 14, bottom: 17 }

export interface Place {
  x(time: number): number
  y(force: number): number
}

/** Places of a time [s] and a force [N]; what lies above `top` stays at the edge. */
export function placeIn(duration: number, top: number): Place {
  const wide = BOX.width - BOX.left - BOX.right
  const high = BOX.height - BOX.top - BOX.bottom
  return {
    x: (time) => BOX.left + (wide * Math.min(time, duration)) / duration,
    y: (force) => BOX.top + high * (1 - Math.min(1, Math.max(0, force / top))),
  }
}

/** Force at the upper edge of all traces [N], so that they can be compared: the peaks, and the window where it is near them. */
export function topForce(scenario: Scenario, runs: RunView[]): number {
  const { least, most } = forceWindow(scenario)
  const peak = Math.max(0, ...runs.map(({ result }) => result?.metrics.peakForce ?? 0))
  const seen = Math.max(peak, least ?? 0)
  return 1.2 * (Math.max(seen, most !== null && most < 2.5 * seen ? most : 0) || most || 1)
}

/** Round forces [N] for the axis, four at most. */
export function forceTicks(top: number, unit: ShownUnit): number[] {
  const most = unit.toShown(top)
  const raw = most / 4
  const ten = 10 ** Math.floor(Math.log10(raw))
  const step = ten * (raw <= ten ? 1 : raw <= 2 * ten ? 2 : raw <= 5 * ten ? 5 : 10)
  const count = Math.floor(most / step + 1e-9)
  return Array.from({ length: count + 1 }, (_, n) => unit.toSi(Number((n * step).toPrecision(12))))
}

/** The trace as a path: of every half unit of width its lowest and its highest row, in the order in which they came. */
export function outline({ x, y }: Place, time: Float64Array, values: Float64Array, rows: number): string {
  const points: string[] = []
  const put = (row: number) => points.push(`${x(time[row]!).toFixed(1)} ${y(values[row]!).toFixed(1)}`)
  for (let row = 0; row < rows; ) {
    const edge = Math.floor(2 * x(time[row]!))
    let [low, high] = [row, row]
    for (; row < rows && Math.floor(2 * x(time[row]!)) === edge; row++) {
      if (values[row]! < values[low]!) low = row
      if (values[row]! > values[high]!) high = row
    }
    put(Math.min(low, high))
    if (low !== high) put(Math.max(low, high))
  }
  return points.length > 0 ? `M${points.join('L')}` : ''
}

/** Distance of two rings along a line, and of the first from the axis. */
const RINGS = { apart: 44, first: 22 }

/** Where rings stand along a trace. */
export function ringsOf({ x, y }: Place, time: Float64Array, values: Float64Array, rows: number) {
  const rings: { x: number; y: number }[] = []
  let next = BOX.left + RINGS.first
  for (let row = 0; row < rows; row++) {
    const at = x(time[row]!)
    if (at < next) continue
    rings.push({ x: at, y: y(values[row]!) })
    next += RINGS.apart
  }
  return rings
}
