/** A chart over a logarithmic axis, with levels, points, and cursors that pointer and keyboard move. */
import { useMemo } from 'react'
import { Frame } from './chart/Frame.tsx'
import type { Surface } from './chart/group.ts'
import { type ChartPoint, DECADES, type LogContent, logLook } from './chart/logLook.ts'
import type { ChartSeries } from './chart/types.ts'

export type { ChartPoint } from './chart/logLook.ts'
export type { Sign } from './chart/types.ts'

interface LogChartProps {
  /** `time` of a series is its place on the logarithmic axis, above 0. */
  series: ChartSeries[]
  xRange: [number, number]
  xUnit: string
  /** Another unit of the axis, and how much of its own one of it is. */
  other?: LogContent['other']
  axis: Surface['axis']
  yLabel: string
  /** Unit of the values as they are. */
  yUnit: string
  /** px, with the axis */
  height: number
  cursor: number | null
  onCursor(x: number): void
  /** Charts of the same key share what is shown of the axis, the second cursor and the pointer's line. */
  syncKey: string
  points: ChartPoint[]
  levels: number[]
  /** Least value that is shown. */
  floor: number
  /** Distances that the figures of the vertical axis may have. */
  steps?: number[]
  /** Whether the axis carries figures; charts stacked on one axis need them once. */
  figures?: boolean
  /** What the chart says, for somebody who does not see it. */
  summary: string
}

const NO_TIME = new Float64Array(0)

export function LogChart(props: LogChartProps) {
  const { yLabel, height, cursor, onCursor, syncKey, steps, axis, summary } = props
  const content = useContent(props)
  const look = useMemo(() => logLook(steps), [steps])
  return (
    <Frame
      {...{ content, look, height, cursor, onCursor, syncKey, axis, summary }}
      title={yLabel}
      name={`${axis.title.toLowerCase()} cursor`}
      keyStep={1 / 200}
    />
  )
}

/** What the plot draws; the same as long as nothing of it changes. */
function useContent(props: LogChartProps): Omit<LogContent, 'yRange'> {
  const { series, xRange, xUnit, other, yUnit, points, levels, floor, figures = true } = props
  const [from, to] = xRange
  return useMemo(
    () => ({
      series,
      time: NO_TIME,
      xRange: [from, to],
      calm: 0,
      unit: { symbol: yUnit, toShown: (value) => value, toSi: (value) => value },
      bands: [],
      ranges: [],
      marks: [],
      lens: DECADES,
      timeAxis: figures,
      points,
      levels,
      floor,
      xUnit,
      other,
    }),
    [series, from, to, yUnit, figures, points, levels, floor, xUnit, other],
  )
}
