/** An effort over what a job measures it by, a line a strategy, with what it is held against and the place of the cursor. */
import type { ReactNode } from 'react'
import { type Scenario, STRATEGIES } from '../../../sim/index.ts'
import { rowAt } from '../../picture/rowAt.ts'
import type { RunView } from '../../store/results.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { dashOf, nameOf } from '../stage/moments.ts'
import type { UnitSystem } from '../units.ts'
import { greatest, ticks } from './ticks.ts'
import './effortChart.css'

/** What the chart of a job is told. */
export interface JobChartProps {
  scenario: Scenario
  runs: RunView[]
  time: number
  units: UnitSystem
  width: number
}

/** A unit that figures are shown in. */
interface Unit {
  symbol: string
  toShown(si: number): number
  toSi(shown: number): number
}

/** A run as a line [SI]. */
export interface Line {
  run: RunView
  time: Float64Array
  across: Float64Array
  effort: Float64Array
}

/** Places on the drawing [px]. */
export interface Places {
  x(across: number): number
  y(effort: number): number
  /** Ends of the axes [SI]. */
  farthest: number
  highest: number
  /** Where what stands under the axis begins and ends. */
  base: number
  bottom: number
}

const HEIGHT = 230
const ROOM = { left: 52, right: 10, top: 8, bottom: 30 }

/** Room over the highest and behind the farthest [share]. */
const OVER = 1.06
const BEHIND = 1.04

interface Props {
  title: string
  /** The chart in words. */
  summary: string
  lines: Line[]
  time: number
  width: number
  across: Unit
  effort: Unit
  /** Both axes begin at 0 and hold at least these [SI]; `exactly`: the axis across ends there. */
  farthest: number
  highest: number
  exactly?: boolean
  /** Height of what stands between the axis and its figures [px]. */
  strip?: number
  /** Under the lines, and over them. */
  behind(places: Places): ReactNode
  over?(places: Places): ReactNode
}

export function EffortChart(props: Props) {
  const { title, summary, lines, time, width, across, effort, strip = 0, behind, over } = props
  const places = placesOf(props)
  const { x, y, farthest, highest, base, bottom } = places
  return (
    <figure className="effort-chart">
      <figcaption>
        {title} [{effort.symbol} over {across.symbol}]
      </figcaption>
      <svg width={width} height={HEIGHT + strip} role="img" aria-label={summary}>
        {behind(places)}
        <path className="effort-axis" d={`M${ROOM.left} ${ROOM.top}V${base}H${x(farthest)}`} />
        {ticks(highest, effort.toShown).map(({ si, text }) => (
          <text key={text} className="effort-text" x={ROOM.left - 6} y={y(effort.toSi(si)) + 4} textAnchor="end">
            {text}
          </text>
        ))}
        {ticks(farthest, across.toShown).map(({ si, text }) => (
          <text key={text} className="effort-text" x={x(across.toSi(si))} y={bottom + 16} textAnchor="middle">
            {text}
          </text>
        ))}
        {lines.map((line) => (
          <Drawn key={nameOf(line.run)} {...{ line, time, x, y }} />
        ))}
        {over?.(places)}
      </svg>
    </figure>
  )
}

function placesOf({ lines, width, farthest, highest, exactly, strip = 0 }: Props): Places {
  const end = exactly ? farthest : BEHIND * Math.max(farthest, ...lines.map(({ across }) => greatest(across)))
  const top = OVER * Math.max(1e-9, highest, ...lines.map(({ effort }) => greatest(effort)))
  const base = HEIGHT - ROOM.bottom
  return {
    farthest: end,
    highest: top,
    base,
    bottom: base + strip,
    x: (at) => ROOM.left + (Math.max(0, at) / end) * (width - ROOM.left - ROOM.right),
    y: (at) => base - (Math.max(0, at) / top) * (base - ROOM.top),
  }
}

interface DrawnProps extends Pick<Places, 'x' | 'y'> {
  line: Line
  time: number
}

function Drawn({ line, time, x, y }: DrawnProps) {
  const { run, time: times, across, effort } = line
  const { index } = rowAt(times, times.length, time)
  return (
    <g
      className="effort-line"
      data-beside={run.axis !== undefined}
      style={{ stroke: `var(--strategy-${run.strategy})` }}
    >
      <polyline points={pointsOf(across, effort, x, y)} strokeDasharray={dashOf(run)} />
      {run.look?.sign &&
        ringsOf(line, { x, y }).map((ring) => (
          <circle key={ring.row} className="effort-ring" cx={ring.x.toFixed(1)} cy={ring.y.toFixed(1)} r={3} />
        ))}
      <circle className="effort-here" cx={x(across[index] ?? 0)} cy={y(effort[index] ?? 0)} r={3.5} />
    </g>
  )
}

/** Distance of two rings along a line [px]. */
const APART = 60

/** Where the rings of the axis beside stand, as far from each other along the line. */
function ringsOf({ across, effort }: Line, { x, y }: Pick<Places, 'x' | 'y'>) {
  const rings: { row: number; x: number; y: number }[] = []
  let left = APART / 2
  let before: { x: number; y: number } | null = null
  for (const [row, at] of across.entries()) {
    if (at < 0) continue
    const here = { x: x(at), y: y(effort[row]!) }
    if (before) left -= Math.hypot(here.x - before.x, here.y - before.y)
    before = here
    if (left > 0) continue
    rings.push({ row, ...here })
    left = APART
  }
  return rings
}

/** Points of a polyline; what lies before the axis begins is left out. */
export function pointsOf(across: Float64Array, effort: Float64Array, x: Places['x'], y: Places['y']): string {
  const points: string[] = []
  for (const [row, at] of across.entries())
    if (at >= 0) points.push(`${x(at).toFixed(1)},${y(effort[row]!).toFixed(1)}`)
  return points.join(' ')
}

/** The runs that can be drawn, by what is read of their traces. */
export const linesOf = (runs: RunView[], read: (run: RunView) => Omit<Line, 'run'>): Line[] =>
  runs.flatMap((run) => (run.traces && run.rows > 1 ? [{ run, ...read(run) }] : []))

/** A figure with its unit, to three digits. */
export const saidIn = ({ toShown, symbol }: Unit, value: number): string =>
  withUnit(formatPlain(toShown(value), 3), symbol)

/** What a line is called: by its strategy, and the axis that it ran on if that is the one beside. */
export const strategyLabel = ({ strategy, axis }: RunView): string => {
  const label = STRATEGIES.find(({ id }) => id === strategy)?.label ?? strategy
  return axis === undefined ? label : `${label} on ${axis}`
}
