/** A chart over time: lines named at their ends, bands, marks, and cursors that pointer and keyboard move. */
import { useMemo } from 'react'
import { type Feed, Frame } from './chart/Frame.tsx'
import type { Range } from './chart/group.ts'
import { TIME_LOOK } from './chart/timeLook.ts'
import {
  type ChartBand,
  type ChartContent,
  type ChartMark,
  type ChartRange,
  type ChartSeries,
  PLAIN_TIME,
  type TimeMap,
} from './chart/types.ts'
import { formatFigure, withUnit } from './format.ts'
import type { ShownUnit } from './unit.ts'

export type { Feed } from './chart/Frame.tsx'
export type { ChartBand, ChartContent, ChartMark, ChartRange, ChartSeries } from './chart/types.ts'

interface ChartProps {
  series: ChartSeries[]
  /** Times of all series that bring none of their own [s]. */
  time: Float64Array
  /** s */
  xRange: [number, number]
  /** How far one can look, if not the range [s]. */
  bounds?: Range
  yLabel: string
  /** The unit in which the SI values are shown; as they are if left out. */
  unit?: ShownUnit
  /** px, with the time axis */
  height: number
  /** s */
  cursorTime: number | null
  onCursor?: (time: number) => void
  /** Charts of the same key share what is shown of the time, the second cursor and the pointer's line. */
  syncKey: string
  bands?: ChartBand[]
  ranges?: ChartRange[]
  marks?: ChartMark[]
  lens?: TimeMap
  /** Least span of the vertical axis, SI: what is small against it looks small. */
  calm?: number
  /** Whether the time axis carries figures; charts stacked on one axis need them once. */
  timeAxis?: boolean
  /** Draws what moves at every frame past the page. */
  feed?: Feed<ChartContent>
  /** What the chart says, for somebody who does not see it. */
  summary: string
}

const AS_IT_IS: ShownUnit = { symbol: '', toShown: (value) => value, toSi: (value) => value }
const NONE: never[] = []
const seconds = (time: number, digits = 4) => withUnit(formatFigure(time, digits), 's')
const TIME = { title: 'Time', figure: seconds, difference: (from: number, to: number) => seconds(to - from, 3) }

export function Chart(props: ChartProps) {
  const { series, time, yLabel, height, cursorTime, onCursor, syncKey, bounds, feed, summary } = props
  const {
    unit = AS_IT_IS,
    bands = NONE,
    ranges = NONE,
    marks = NONE,
    lens = PLAIN_TIME,
    calm = 0,
    timeAxis = true,
  } = props
  const [from, to] = props.xRange
  const content = useMemo<Omit<ChartContent, 'yRange'>>(
    () => ({ series, time, xRange: [from, to], calm, unit, bands, ranges, marks, lens, timeAxis }),
    [series, time, from, to, calm, unit, bands, ranges, marks, lens, timeAxis],
  )
  return (
    <Frame
      {...{ content, height, onCursor, syncKey, bounds, feed, summary }}
      look={TIME_LOOK}
      title={yLabel}
      name="time cursor"
      cursor={cursorTime}
      axis={TIME}
      keyStep={1 / 400}
    />
  )
}
