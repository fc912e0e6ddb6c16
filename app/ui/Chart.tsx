/** A chart over time: lines named at their ends, bands, marks, and a cursor that pointer and keyboard move. */
import { type KeyboardEvent, type PointerEvent, useEffect, useId, useMemo, useRef } from 'react'
import { valueText } from './chart/labels.ts'
import { ChartPlot } from './chart/plot.ts'
import {
  type ChartBand,
  type ChartContent,
  type ChartMark,
  type ChartSeries,
  PLAIN_TIME,
  type TimeMap,
} from './chart/types.ts'
import { formatFigure } from './format.ts'
import { UnitText } from './Symbols.tsx'
import type { ShownUnit } from './unit.ts'

export type { ChartBand, ChartMark, ChartSeries } from './chart/types.ts'

interface ChartProps {
  series: ChartSeries[]
  /** Times of all series that bring none of their own [s]. */
  time: Float64Array
  /** s */
  xRange: [number, number]
  yLabel: string
  /** The unit in which the SI values are shown; as they are if left out. */
  unit?: ShownUnit
  /** px, with the time axis */
  height: number
  /** s */
  cursorTime: number | null
  onCursor?: (time: number) => void
  /** Charts of the same key share the pointer's line. */
  syncKey: string
  bands?: ChartBand[]
  marks?: ChartMark[]
  lens?: TimeMap
  /** Whether the time axis carries figures; charts stacked on one axis need them once. */
  timeAxis?: boolean
  /** What the chart says, for somebody who does not see it. */
  summary: string
}

const AS_IT_IS: ShownUnit = { symbol: '', toShown: (value) => value, toSi: (value) => value }
const NONE: never[] = []
/** Share of the shown range that an arrow key moves the cursor; with Shift ten times as much. */
const KEY_STEP = 1 / 400

export function Chart(props: ChartProps) {
  const { series, time, yLabel, height, cursorTime, onCursor, syncKey, summary } = props
  const { unit = AS_IT_IS, bands = NONE, marks = NONE, lens = PLAIN_TIME, timeAxis = true } = props
  const [from, to] = props.xRange
  const content = useMemo<ChartContent>(
    () => ({ series, time, xRange: [from, to], unit, bands, marks, lens, timeAxis }),
    [series, time, from, to, unit, bands, marks, lens, timeAxis],
  )
  const host = useRef<HTMLDivElement>(null)
  const plot = useRef<ChartPlot>(null)
  const summaryId = useId()

  useEffect(() => {
    if (!host.current) return
    plot.current = new ChartPlot(host.current, content, height, syncKey)
    return () => plot.current?.destroy()
  }, [syncKey])
  useEffect(() => {
    if (plot.current) plot.current.content = content
  }, [content])
  useEffect(() => {
    if (plot.current) plot.current.cursor = cursorTime
  }, [cursorTime])
  useEffect(() => {
    if (host.current) plot.current?.resize(host.current.clientWidth, height)
  }, [height])

  const point = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    if (plot.current && event.buttons & 1) onCursor?.(plot.current.timeAt(event.clientX))
  }
  const press = (event: KeyboardEvent) => {
    const next = keyTime(event, cursorTime ?? from, [from, to], lens)
    if (next === null) return
    event.preventDefault()
    onCursor?.(next)
  }

  const now = cursorTime ?? from
  const named = series.filter((line) => line.label !== '' && !line.faint)
  return (
    <figure className="chart">
      <figcaption className="chart-title">
        {yLabel} {unit.symbol !== '' && <UnitText symbol={unit.symbol} />}
      </figcaption>
      <div
        ref={host}
        className="chart-plot"
        role="slider"
        tabIndex={0}
        aria-label={`${yLabel}: time cursor`}
        aria-describedby={summaryId}
        aria-valuemin={from}
        aria-valuemax={to}
        aria-valuenow={now}
        aria-valuetext={`${formatFigure(now)} s: ${named.map((line) => `${line.label} ${valueText(content, line, now)}`).join(', ')}`}
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

/** The time that a key asks for; steps are even on the axis as the lens shows it. */
function keyTime(event: KeyboardEvent, now: number, [from, to]: [number, number], lens: TimeMap): number | null {
  const steps: Record<string, number> = {
    ArrowLeft: -1,
    ArrowDown: -1,
    ArrowRight: 1,
    ArrowUp: 1,
    PageDown: -10,
    PageUp: 10,
  }
  if (event.key === 'Home') return from
  if (event.key === 'End') return to
  const step = steps[event.key]
  if (step === undefined) return null
  const span = lens.toDisplay(to) - lens.toDisplay(from)
  const place = lens.toDisplay(now) + step * (event.shiftKey ? 10 : 1) * KEY_STEP * span
  return Math.min(to, Math.max(from, lens.toTime(Math.min(lens.toDisplay(to), Math.max(lens.toDisplay(from), place)))))
}
