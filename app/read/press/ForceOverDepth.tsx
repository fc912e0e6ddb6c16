/** Force of the ram over depth of the bushing, a line a strategy, with the band that it is held against and the place of the cursor. */
import { jointWindow, type Scenario, STRATEGIES } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { greatest, ticks } from '../chart/ticks.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { rowAt, tracesOf } from './traces.ts'
import './forceOverDepth.css'

interface Props {
  scenario: Scenario
  runs: RunView[]
  time: number
  units: UnitSystem
  width: number
}

const HEIGHT = 230
const ROOM = { left: 52, right: 10, top: 8, bottom: 30 }

export function ForceOverDepth({ scenario, runs, time, units, width }: Props) {
  const { band, most, seat, depth } = jointWindow(scenario)
  const drawn = runs.flatMap((run) => (run.traces && run.rows > 1 ? [{ run, traces: tracesOf(run.traces) }] : []))
  const deepest =
    1.04 * Math.max(depth.least, band.at(-1)?.depth ?? 0, ...drawn.map(({ traces }) => greatest(traces.depth)))
  const highest =
    1.06 *
    Math.max(
      1e-9,
      ...band.map((point) => point.most),
      seat.least ?? 0,
      ...drawn.map(({ traces }) => greatest(traces.force)),
    )
  const force = quantityUnit('force', units)
  const length = quantityUnit('length', units)
  const x = (at: number) => ROOM.left + (Math.max(0, at) / deepest) * (width - ROOM.left - ROOM.right)
  const y = (at: number) => HEIGHT - ROOM.bottom - (at / highest) * (HEIGHT - ROOM.top - ROOM.bottom)
  const edge = (of: 'least' | 'most') => band.map((point) => `${x(point.depth)},${y(point[of])}`)
  return (
    <figure className="force-over-depth">
      <figcaption>
        Force over depth [{force.symbol} over {length.symbol}]
      </figcaption>
      <svg width={width} height={HEIGHT} role="img" aria-label={summaryOf(scenario, runs, units)}>
        {band.length > 1 && (
          <>
            <polygon className="fod-band" points={[...edge('least'), ...edge('most').reverse()].join(' ')} />
            <polyline className="fod-edge" points={edge('least').join(' ')} />
            <polyline className="fod-edge" points={edge('most').join(' ')} />
          </>
        )}
        {most !== null && most < highest && <path className="fod-limit" d={`M${x(0)} ${y(most)}H${x(deepest)}`} />}
        <path className="fod-axis" d={`M${x(0)} ${ROOM.top}V${y(0)}H${x(deepest)}`} />
        {ticks(highest, force.toShown).map(({ si, text }) => (
          <text key={text} className="fod-text" x={ROOM.left - 6} y={y(force.toSi(si)) + 4} textAnchor="end">
            {text}
          </text>
        ))}
        {ticks(deepest, length.toShown).map(({ si, text }) => (
          <text
            key={text}
            className="fod-text"
            x={x(length.toSi(si))}
            y={HEIGHT - ROOM.bottom + 16}
            textAnchor="middle"
          >
            {text}
          </text>
        ))}
        {drawn.map(({ run, traces }) => (
          <g key={run.strategy} className="fod-line" style={{ stroke: `var(--strategy-${run.strategy})` }}>
            <polyline
              points={pathOf(traces, x, y)}
              strokeDasharray={STRATEGIES.find(({ id }) => id === run.strategy)?.look.dash.join(' ')}
            />
            <Here {...{ traces, time, x, y }} />
          </g>
        ))}
      </svg>
    </figure>
  )
}

type Columns = ReturnType<typeof tracesOf>
type Place = (value: number) => number

/** Up to the deepest point: what the force does at rest is a matter of time, not of depth. */
function pathOf({ depth, force }: Columns, x: Place, y: Place): string {
  const points: string[] = []
  for (let row = 0; row < depth.length; row++) points.push(`${x(depth[row]!).toFixed(1)},${y(force[row]!).toFixed(1)}`)
  return points.join(' ')
}

function Here({ traces, time, x, y }: { traces: Columns; time: number; x: Place; y: Place }) {
  const row = rowAt(traces.time, time)
  return <circle className="fod-here" cx={x(traces.depth[row] ?? 0)} cy={y(traces.force[row] ?? 0)} r={3.5} />
}

/** The chart in words. */
function summaryOf(scenario: Scenario, runs: RunView[], units: UnitSystem): string {
  const { band } = jointWindow(scenario)
  const force = quantityUnit('force', units)
  const length = quantityUnit('length', units)
  const said = ({ toShown, symbol }: typeof force, value: number) => withUnit(formatPlain(toShown(value), 3), symbol)
  const lines = runs.flatMap((run) => {
    if (!run.traces || run.rows < 2) return []
    const traces = tracesOf(run.traces)
    const label = STRATEGIES.find(({ id }) => id === run.strategy)?.label ?? run.strategy
    return [`${label}: up to ${said(force, greatest(traces.force))}, down to ${said(length, greatest(traces.depth))}.`]
  })
  const [first, last] = [band[0], band.at(-1)]
  const held =
    first && last && band.length > 1
      ? `The band runs from ${said(force, first.least)} to ${said(force, first.most)} at ${said(length, first.depth)}, to ${said(force, last.least)} to ${said(force, last.most)} at ${said(length, last.depth)}.`
      : 'There is no band.'
  return `Force of the ram over depth of the bushing. ${held} ${lines.join(' ')}`
}
