/** Columns for drawing and values at an instant. */
import type { ShownUnit } from '../unit.ts'
import { type ChartContent, type ChartSeries, PLAIN_TIME, type TimeMap } from './types.ts'

const NOTHING = new Float64Array(0)

export const timeOf = (content: ChartContent, series: ChartSeries) => series.time ?? content.time

/** Time stretched by the lens and values in the shown unit; columns that need no change are handed through. */
export function columns(content: ChartContent, series: ChartSeries): [Float64Array, Float64Array] {
  const time = timeOf(content, series)
  if (!series.values) return [NOTHING, NOTHING]
  const rows = Math.min(time.length, series.values.length)
  const whole = rows === time.length ? time : time.subarray(0, rows)
  const [from, to] = shownRows(whole, content.xRange)
  return [stretch(whole, content.lens).subarray(from, to), convert(series.values.subarray(from, to), content.unit)]
}

/** Rows in a range, with one more on either side where the line comes in and leaves. `time` rises, but not strictly. */
function shownRows(time: Float64Array, [from, to]: [number, number]): [number, number] {
  return [Math.max(0, firstAbove(time, from) - 2), Math.min(time.length, firstAbove(time, to) + 1)]
}

/** The first row whose time is above `at`. */
function firstAbove(time: Float64Array, at: number): number {
  let low = 0
  let high = time.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (time[middle]! > at) high = middle
    else low = middle + 1
  }
  return low
}

/** Times under a lens; all charts of a run share them. */
const stretched = new WeakMap<TimeMap, WeakMap<Float64Array, Float64Array>>()

function stretch(time: Float64Array, lens: TimeMap): Float64Array {
  if (lens === PLAIN_TIME) return time
  let known = stretched.get(lens)
  if (!known) {
    known = new WeakMap()
    stretched.set(lens, known)
  }
  let display = known.get(time)
  if (!display) {
    display = time.map((t) => lens.toDisplay(t))
    known.set(time, display)
  }
  return display
}

/** Every unit is a straight line through its offset, which is quicker than asking it for each value. */
function convert(values: Float64Array, unit: ShownUnit): Float64Array {
  const offset = unit.toShown(0)
  const gain = unit.toShown(1) - offset
  return gain === 1 && offset === 0 ? values : values.map((value) => offset + gain * value)
}

/** The value at a time between two rows, by a straight line; null outside the rows. `time` rises, but not strictly. */
export function valueAt(time: Float64Array, values: Float64Array | null, at: number): number | null {
  const rows = Math.min(time.length, values?.length ?? 0)
  if (!values || rows === 0 || at < time[0]! || at > time[rows - 1]!) return null
  let low = 0
  let high = rows - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (time[middle]! <= at) low = middle
    else high = middle
  }
  const width = time[high]! - time[low]!
  const share = width > 0 ? (at - time[low]!) / width : 1
  return values[low]! + share * (values[high]! - values[low]!)
}

/**
 * Limits of the vertical axis: the data, zero, and the bands' edges as far as they do not dwarf the data. Data within less than
 * `calm` stands on an axis up to it, and a quarter of it below zero where there is any: noise looks as small as it is, and the axis
 * stands still whichever side it falls to.
 */
export function limits(low: number | null, high: number | null, edges: number[], calm = 0): [number, number] {
  let least = Math.min(0, finite(low))
  let most = Math.max(0, finite(high))
  for (const edge of edges) {
    if (edge > most && (most <= 0 || edge <= 3 * most)) most = edge
    if (edge < least && edge >= 3 * least) least = edge
  }
  if (most - least < calm) {
    most = Math.max(most, calm)
    least = least < 0 ? Math.min(least, -calm / 4) : 0
  }
  if (least === most) most = least + 1
  const air = 0.08 * (most - least)
  return [least < 0 ? least - air : least, most > 0 ? most + air : most]
}

const finite = (value: number | null) => (value === null || !Number.isFinite(value) ? 0 : value)
