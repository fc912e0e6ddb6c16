/** The map with its axes, the bench's own point, and a cursor that pointer and keys move from grip to grip. */
import { type KeyboardEvent, type PointerEvent, useMemo, useState } from 'react'
import {
  classOf,
  editScenario,
  exponentOf,
  jobOf,
  type MapAxis,
  metricText,
  quantityAt,
  readPath,
  type Scenario,
  shownUnit,
  studyWords,
} from '../../../../sim/index.ts'
import { nameOf } from '../../../read/spread/name.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { formatPlain, withUnit } from '../../../ui/format.ts'
import { useWidth } from '../../../ui/useWidth.ts'
import { labelOf } from '../Ask.tsx'
import { putOnBench } from '../put.ts'
import { levelsOf } from './contours.ts'
import { type Frame, figureOf, frameOf, heightOf, nearest } from './frame.ts'
import { Layers } from './Layers.tsx'
import { wordOfClass } from './look.ts'
import type { MapAnswer, Shaded } from './state.ts'

interface DrawingProps {
  answer: MapAnswer
  shaded: Shaded
}

interface Cursor {
  column: number
  row: number
}

export function Drawing({ answer, shaded }: DrawingProps) {
  const [box, width] = useWidth<HTMLDivElement>()
  const frame = useMemo(() => frameOf(answer, width), [answer.x, answer.y, width])
  const { grid } = answer
  const middle = { column: (grid.xs.length - 1) / 2, row: (grid.ys.length - 1) / 2 }
  const [cursor, setCursor] = useState<Cursor>(middle)
  const put = (at: Cursor) => putPoint(answer, at)
  const pointed = (event: PointerEvent<HTMLDivElement>): Cursor => {
    const area = event.currentTarget.getBoundingClientRect()
    return nearest(grid, frame, event.clientX - area.left, event.clientY - area.top)
  }
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') return put(cursor)
    const next = keyed(event, cursor, grid.xs.length, grid.ys.length)
    if (!next) return
    event.preventDefault()
    setCursor(next)
  }
  return (
    <figure className="map-figure">
      <AxisName scenario={answer.scenario} axis={answer.y} sign="↑" />
      <div
        ref={box}
        className="map-plot"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its cursor is moved by keys
        tabIndex={0}
        aria-label={`Map of ${labelOf(answer.strategy).toLowerCase()} over ${nameOf(answer.scenario, answer.x.path)} and ${nameOf(answer.scenario, answer.y.path)}. Arrow keys move the cursor, Enter puts its point on the bench.`}
        onKeyDown={press}
        onPointerMove={(event) => setCursor(pointed(event))}
        onClick={(event) => put(pointed(event as unknown as PointerEvent<HTMLDivElement>))}
      >
        <svg width={width} height={heightOf(frame)} aria-hidden="true">
          <Layers answer={answer} shaded={shaded} frame={frame} />
          <rect className="map-frame" x={frame.left} y={frame.top} width={frame.width} height={frame.height} />
          <Ticks scenario={answer.scenario} axis={answer.x} frame={frame} across />
          <Ticks scenario={answer.scenario} axis={answer.y} frame={frame} />
          <OwnPoint answer={answer} frame={frame} />
          <circle
            className="map-cursor"
            cx={frame.x(grid.xs[cursor.column]!)}
            cy={frame.y(grid.ys[cursor.row]!)}
            r={6}
          />
        </svg>
      </div>
      <AxisName scenario={answer.scenario} axis={answer.x} sign="→" />
      <figcaption>
        + is what stands on the bench. Each {studyWords(answer.scenario.job).run} has the noise of the file, so the map
        is that of one exact part.
      </figcaption>
      <Readout answer={answer} shaded={shaded} cursor={cursor} put={() => put(cursor)} />
    </figure>
  )
}

function putPoint({ scenario, grid, x, y }: MapAnswer, { column, row }: Cursor) {
  const point = editScenario(scenario, [
    { path: x.path, value: grid.xs[column]! },
    { path: y.path, value: grid.ys[row]! },
  ])
  if (point.ok) putOnBench('A point of the map', point.scenario, scenario)
}

const STEPS: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** Eight lines of the grid at once. */
const FAR = 8

function keyed({ key, shiftKey }: KeyboardEvent, { column, row }: Cursor, columns: number, rows: number) {
  const step = STEPS[key]
  if (!step) return null
  const by = shiftKey ? FAR : 1
  const inside = (at: number, count: number) => Math.min(count - 1, Math.max(0, at))
  return { column: inside(column + by * step[0], columns), row: inside(row + by * step[1], rows) }
}

function useUnitOf(scenario: Scenario, path: string) {
  const units = useView((state) => state.units)
  return shownUnit(quantityAt(scenario, path)!, units, exponentOf(scenario))
}

function AxisName({ scenario, axis, sign }: { scenario: Scenario; axis: MapAxis; sign: string }) {
  const { symbol } = useUnitOf(scenario, axis.path)
  return (
    <p className={`map-axis ${sign === '→' ? 'map-across' : ''}`}>
      {nameOf(scenario, axis.path)} <span className="unit">{symbol}</span> {sign}
    </p>
  )
}

interface TicksProps {
  scenario: Scenario
  axis: MapAxis
  frame: Frame
  across?: boolean
}

function Ticks({ scenario, axis: { path, from, to }, frame, across = false }: TicksProps) {
  const unit = useUnitOf(scenario, path)
  const [low, high] = [unit.toShown(from), unit.toShown(to)]
  const marks = levelsOf(low, high, across ? Math.max(2, frame.width / 90) : 5)
  return marks.map((mark) => {
    const text = formatPlain(mark, 4)
    if (across)
      return (
        <text key={mark} x={frame.x(unit.toSi(mark))} y={frame.top + frame.height + 16} textAnchor="middle">
          {text}
        </text>
      )
    return (
      <text key={mark} x={frame.left - 6} y={frame.y(unit.toSi(mark)) + 4} textAnchor="end">
        {text}
      </text>
    )
  })
}

/** Where the scenario on the bench lies, if that is on the map. */
function OwnPoint({ answer: { x, y }, frame }: { answer: MapAnswer; frame: Frame }) {
  const bench = useScenario(({ scenario }) => scenario)
  const [across, up] = [x, y].map((axis) => {
    const value = readPath(bench, axis.path)
    return typeof value === 'number' && value >= axis.from && value <= axis.to ? value : null
  })
  if (across === null || up === null) return null
  return <path className="map-own" d="M-7 0H7M0 -7V7" transform={`translate(${frame.x(across!)} ${frame.y(up!)})`} />
}

interface ReadoutProps extends DrawingProps {
  cursor: Cursor
  put(): void
}

function Readout({ answer, shaded, cursor, put }: ReadoutProps) {
  const { scenario, x, y, grid } = answer
  const units = useView((state) => state.units)
  const at = cursor.row * grid.xs.length + cursor.column
  const outcome = grid.outcomes[at]
  const value = (axis: MapAxis, si: number) => {
    const unit = shownUnit(quantityAt(scenario, axis.path)!, units, exponentOf(scenario))
    return `${quantityAt(scenario, axis.path)!.title} ${withUnit(formatPlain(unit.toShown(si), 4), unit.symbol)}`
  }
  const job = jobOf(scenario)
  const figure = (id: Shaded) => {
    const metric = job.figures.find((each) => each.id === id) ?? { label: 'Nearest margin', unit: '', shown: '%' }
    const si = figureOf(answer, at, id)
    const { text, symbol } = metricText(metric, Number.isNaN(si) ? null : si, units)
    return `${metric.label} ${withUnit(text, symbol)}`
  }
  const ids = [...new Set<Shaded>([shaded, ...job.study.told])].filter((id) => id !== 'none')
  return (
    <div className="map-readout">
      <p aria-live="polite">
        {value(x, grid.xs[cursor.column]!)}, {value(y, grid.ys[cursor.row]!)}:{' '}
        <b>
          {outcome
            ? wordOfClass(scenario.job, classOf(scenario.job, outcome))
            : `not yet ${studyWords(scenario.job).acted}`}
        </b>
        {outcome && `. ${ids.map(figure).join(', ')}.`}
      </p>
      <Button disabled={!outcome || outcome.fate === 'refused'} onClick={put}>
        Put this point on the bench
      </Button>
    </div>
  )
}
