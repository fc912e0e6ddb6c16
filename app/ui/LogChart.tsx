/** A chart over a logarithmic axis, with levels, points, and a cursor that pointer and keyboard move. */
import { type KeyboardEvent, type PointerEvent, useEffect, useId, useMemo, useRef } from 'react'
import { valueText } from './chart/labels.ts'
import { type ChartPoint, DECADES, type LogContent, LogPlot } from './chart/logPlot.ts'
import type { ChartSeries } from './chart/types.ts'
import { formatFigure } from './format.ts'
import { UnitText } from './Symbols.tsx'

export type { ChartPoint } from './chart/logPlot.ts'

interface LogChartProps {
  /** `time` of a series is its place on the logarithmic axis, above 0. */
  series: ChartSeries[]
  xRange: [number, number]
  xLabel: string
  xUnit: string
  yLabel: string
  /** Unit of the values as they are. */
  yUnit: string
  /** px, with the axis */
  height: number
  cursor: number | null
  onCursor(x: number): void
  /** Charts of the same key share the pointer's line. */
  syncKey: string
  points: ChartPoint[]
  levels: number[]
  /** Least value that is shown. */
  floor: number
  /** Distances that the figures of the vertical axis may have. */
  steps?: number[]
  /** Whether the axis carries figures; charts stacked on one axis need them once. */
  axis?: boolean
  /** What the chart says, for somebody who does not see it. */
  summary: string
}

const NO_TIME = new Float64Array(0)
/** Share of the shown range that an arrow key moves the cursor. */
const KEY_STEP = 1 / 200

export function LogChart(props: LogChartProps) {
  const { series, xLabel, xUnit, yLabel, yUnit, height, cursor, onCursor, syncKey, steps, summary } = props
  const [from, to] = props.xRange
  const content = useContent(props)
  const host = useRef<HTMLDivElement>(null)
  const plot = useRef<LogPlot>(null)
  const summaryId = useId()

  useEffect(() => {
    if (!host.current) return
    plot.current = new LogPlot(host.current, content, height, syncKey, steps)
    return () => plot.current?.destroy()
  }, [syncKey, height])
  useEffect(() => {
    if (plot.current) plot.current.content = content
  }, [content])
  useEffect(() => {
    if (plot.current) plot.current.cursor = cursor
  }, [cursor])

  const point = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    if (plot.current && event.buttons & 1) onCursor(plot.current.valueAt(event.clientX))
  }
  const now = Math.min(to, Math.max(from, cursor ?? from))
  const press = (event: KeyboardEvent) => {
    const next = keyValue(event, now, [from, to])
    if (next === null) return
    event.preventDefault()
    onCursor(next)
  }
  return (
    <figure className="chart">
      <figcaption className="chart-title">
        {yLabel} {yUnit !== '' && <UnitText symbol={yUnit} />}
      </figcaption>
      <div
        ref={host}
        className="chart-plot"
        role="slider"
        tabIndex={0}
        aria-label={`${yLabel}: ${xLabel.toLowerCase()} cursor`}
        aria-describedby={summaryId}
        aria-valuemin={from}
        aria-valuemax={to}
        aria-valuenow={now}
        aria-valuetext={`${formatFigure(now)} ${xUnit}: ${series.map((line) => `${line.label} ${valueText(content, line, now)}`).join(', ')}`}
        onPointerDown={point}
        onPointerMove={point}
        onKeyDown={press}
      />
      <p id={summaryId} className="sr-only">
        {summary}
      </p>
    </figure>
  )
}

/** What the plot draws; the same as long as nothing of it changes. */
function useContent({ series, xRange, xUnit, yUnit, points, levels, floor, axis = true }: LogChartProps): LogContent {
  const [from, to] = xRange
  return useMemo<LogContent>(
    () => ({
      series,
      time: NO_TIME,
      xRange: [from, to],
      unit: { symbol: yUnit, toShown: (value) => value, toSi: (value) => value },
      bands: [],
      marks: [],
      lens: DECADES,
      timeAxis: axis,
      points,
      levels,
      floor,
      xUnit,
    }),
    [series, from, to, yUnit, axis, points, levels, floor, xUnit],
  )
}

const STEPS: Record<string, number> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -10,
  PageUp: 10,
}

/** The value that a key asks for; steps are even on the axis. */
export function keyValue(
  event: Pick<KeyboardEvent, 'key' | 'shiftKey'>,
  now: number,
  [from, to]: [number, number],
): number | null {
  if (event.key === 'Home') return from
  if (event.key === 'End') return to
  const step = STEPS[event.key]
  if (step === undefined) return null
  const next = now * (to / from) ** (step * (event.shiftKey ? 10 : 1) * KEY_STEP)
  return Math.min(to, Math.max(from, next))
}
