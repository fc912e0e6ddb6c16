/** What a chart is told: all values SI; the chart shows them in its unit. */
import type { TimeLens } from '../timeLens.ts'
import type { ShownUnit } from '../unit.ts'

/** What a chart needs of a lens: both functions rise all the way. */
export type TimeMap = Pick<TimeLens, 'toDisplay' | 'toTime'>

/** Shapes along a line where it is not alone. */
export type Sign = 'circle' | 'square' | 'triangle' | 'diamond' | 'pentagon' | 'nabla'

export interface ChartSeries {
  /** Written at the line's end; '' for none. */
  label: string
  /** A CSS colour, or a variable as `var(--damage)`. */
  color: string
  /** Dash pattern in px; solid if left out. */
  dash?: number[]
  width?: number
  values: Float64Array | null
  /** Times of the values if they are not the chart's own [s]. */
  time?: Float64Array
  /** A run of before: thin, pale and without a name. */
  faint?: boolean
  /** What tells it from lines that lie on it; also beside its name. `signed`: all along the line, whether or not one does. */
  sign?: Sign
  signed?: boolean
}

/** Room left and right of a chart's plot [px]; what stands in line with charts keeps the same. */
export const GUTTERS = { left: 46, right: 108 }

/** A calm band between two values; an open end is null. */
export interface ChartBand {
  from: number | null
  to: number | null
  label: string
  /** Hatched edges that say what happens outside, as the force window has them. */
  hatch?: boolean
  below?: string
  above?: string
}

/** Between which values something runs over time, as an area in a colour. */
export interface ChartRange {
  /** s */
  time: Float64Array
  low: Float64Array
  high: Float64Array
  color: string
}

export interface ChartMark {
  /** s */
  time: number
  label: string
  color?: string
}

export interface ChartContent {
  series: ChartSeries[]
  /** Times of all series that bring none of their own [s]. */
  time: Float64Array
  /** What is shown of the axis [s]. */
  xRange: [number, number]
  /** What is shown of the values, in the shown unit; null: what there is in the range. */
  yRange: [number, number] | null
  /** Values that are always shown to, so that what is nothing does not fill the chart. */
  calm: number
  unit: ShownUnit
  bands: ChartBand[]
  ranges: ChartRange[]
  marks: ChartMark[]
  lens: TimeMap
  /** Whether the time axis carries figures. */
  timeAxis: boolean
}

export const PLAIN_TIME: TimeMap = { toDisplay: (time) => time, toTime: (display) => display }
