/** Tension over time, a line a strategy, with the window that it is held against, the speed of the line below, and the place of the cursor. */
import { type Scenario, STRATEGIES, tensionLines, tensionWindow, wordingOf } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { greatest, ticks } from '../chart/ticks.ts'
import { rowAt } from '../press/traces.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { webTraces } from './traces.ts'
import '../press/forceOverDepth.css'
import './tensionOverTime.css'

interface Props {
  scenario: Scenario
  runs: RunView[]
  time: number
  units: UnitSystem
  width: number
}

const HEIGHT = 280
const ROOM = { left: 52, right: 12, top: 8, bottom: 30 }
/** Height of the strip of the line's speed, and what lies between it and the tension [px]. */
const STRIP = 44
const GAP = 14

export function TensionOverTime({ scenario, runs, time, units, width }: Props) {
  const { least, most, from, tears } = tensionWindow(scenario)
  const { duration } = scenario.run
  const drawn = runs.flatMap((run) => (run.traces && run.rows > 1 ? [{ run, traces: webTraces(run.traces) }] : []))
  const highest = 1.06 * Math.max(1e-9, most, ...drawn.map(({ traces }) => greatest(traces.tension)))
  const force = quantityUnit('force', units)
  const base = HEIGHT - ROOM.bottom - STRIP - GAP
  const x = (at: number) => ROOM.left + (at / duration) * (width - ROOM.left - ROOM.right)
  const y = (at: number) => base - (Math.max(0, at) / highest) * (base - ROOM.top)
  return (
    <figure className="force-over-depth">
      <figcaption>Tension over time [{force.symbol} over s]</figcaption>
      <svg width={width} height={HEIGHT} role="img" aria-label={summaryOf(scenario, runs, units)}>
        <rect className="fod-band" x={x(from)} width={x(duration) - x(from)} y={y(most)} height={y(least) - y(most)} />
        <path className="fod-edge" d={`M${x(from)} ${y(most)}V${y(least)}H${x(duration)}`} />
        <path className="tot-most" d={`M${x(0)} ${y(most)}H${x(duration)}`} />
        {tears !== null && tears < highest && <path className="fod-limit" d={`M${x(0)} ${y(tears)}H${x(duration)}`} />}
        <path className="fod-axis" d={`M${x(0)} ${ROOM.top}V${base}H${x(duration)}`} />
        {ticks(highest, force.toShown).map(({ si, text }) => (
          <text key={text} className="fod-text" x={ROOM.left - 6} y={y(force.toSi(si)) + 4} textAnchor="end">
            {text}
          </text>
        ))}
        {ticks(duration, (seconds) => seconds).map(({ si, text }) => (
          <text key={text} className="fod-text" x={x(si)} y={HEIGHT - ROOM.bottom + 16} textAnchor="middle">
            {text}
          </text>
        ))}
        <LineStrip drawn={drawn} x={x} units={units} end={x(duration)} />
        {drawn.map(({ run, traces }) => (
          <g key={run.strategy} className="fod-line" style={{ stroke: `var(--strategy-${run.strategy})` }}>
            <polyline
              points={pointsOf(traces.time, traces.tension, x, y)}
              strokeDasharray={STRATEGIES.find(({ id }) => id === run.strategy)?.look.dash.join(' ')}
            />
            <circle className="fod-here" cx={x(time)} cy={y(traces.tension[rowAt(traces.time, time)] ?? 0)} r={3.5} />
          </g>
        ))}
        <path className="tot-cursor" d={`M${x(time)} ${ROOM.top}V${HEIGHT - ROOM.bottom}`} />
      </svg>
    </figure>
  )
}

type Columns = ReturnType<typeof webTraces>
type Place = (value: number) => number

const pointsOf = (time: Float64Array, values: Float64Array, x: Place, y: Place) =>
  Array.from(time, (t, row) => `${x(t).toFixed(1)},${y(values[row]!).toFixed(1)}`).join(' ')

interface StripProps {
  drawn: { traces: Columns }[]
  x: Place
  units: UnitSystem
  end: number
}

/** The speed of the line, the same for every strategy. */
function LineStrip({ drawn, x, units, end }: StripProps) {
  const [first] = drawn
  const speed = quantityUnit('speed', units)
  const bottom = HEIGHT - ROOM.bottom
  const top = first ? greatest(first.traces.lineSpeed) : 0
  const y = (at: number) => bottom - (top > 0 ? (at / top) * (STRIP - 14) : 0)
  return (
    <g>
      <path className="fod-axis" d={`M${ROOM.left} ${bottom - STRIP}V${bottom}H${end}`} />
      {first && <polyline className="tot-line" points={pointsOf(first.traces.time, first.traces.lineSpeed, x, y)} />}
      <text className="fod-text" x={ROOM.left + 6} y={bottom - STRIP + 10}>
        {top > 0
          ? `line, up to ${withUnit(formatPlain(speed.toShown(top), 3), speed.symbol)}`
          : 'line, which stands still'}
      </text>
    </g>
  )
}

/** The chart in words. */
function summaryOf(scenario: Scenario, runs: RunView[], units: UnitSystem): string {
  const force = quantityUnit('force', units)
  const said = (value: number) => withUnit(formatPlain(force.toShown(value), 3), force.symbol)
  const lines = runs.flatMap((run) => {
    if (!run.traces || run.rows < 2) return []
    const { tension } = webTraces(run.traces)
    const label = STRATEGIES.find(({ id }) => id === run.strategy)?.label ?? run.strategy
    return [`${label}: up to ${said(greatest(tension))}, at the end ${said(tension.at(-1) ?? 0)}.`]
  })
  return `Tension over time. Held against ${tensionLines(scenario, wordingOf(units)).join(', ')}. ${lines.join(' ')}`
}
