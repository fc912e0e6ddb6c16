/** Torque of the thread over the angle of the closure on it, a line a strategy, with the window that it is held against and the place of the cursor. */
import { capIn, type Scenario, STRATEGIES, torqueLines, torqueWindow, wordingOf } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { greatest, ticks } from '../chart/ticks.ts'
import { rowAt } from '../press/traces.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { capTraces } from './traces.ts'
import '../press/forceOverDepth.css'

interface Props {
  scenario: Scenario
  runs: RunView[]
  time: number
  units: UnitSystem
  width: number
}

const HEIGHT = 230
const ROOM = { left: 52, right: 10, top: 8, bottom: 30 }
/** Past the nominal liner [rad], where no run has got further. */
const BEYOND = 1

export function TorqueOverAngle({ scenario, runs, time, units, width }: Props) {
  const { least, most, strip, turns } = torqueWindow(scenario)
  const { closure } = capIn(scenario)
  const drawn = runs.flatMap((run) => (run.traces && run.rows > 1 ? [{ run, traces: onThread(run) }] : []))
  const farthest = 1.04 * Math.max(closure.engagement + BEYOND, ...drawn.map(({ traces }) => greatest(traces.angle)))
  const highest = 1.06 * Math.max(1e-9, least, most ?? 0, ...drawn.map(({ traces }) => greatest(traces.torque)))
  const torque = quantityUnit('spindleTorque', units)
  const angle = quantityUnit('turns', units)
  const x = (at: number) => ROOM.left + (Math.max(0, at) / farthest) * (width - ROOM.left - ROOM.right)
  const y = (at: number) => HEIGHT - ROOM.bottom - (Math.max(0, at) / highest) * (HEIGHT - ROOM.top - ROOM.bottom)
  return (
    <figure className="force-over-depth">
      <figcaption>
        Torque over angle on the thread [{torque.symbol} over {angle.symbol}]
      </figcaption>
      <svg width={width} height={HEIGHT} role="img" aria-label={summaryOf(scenario, runs, units)}>
        <rect
          className="fod-band"
          x={x(turns ?? 0)}
          width={x(farthest) - x(turns ?? 0)}
          y={y(most ?? highest)}
          height={y(least) - y(most ?? highest)}
        />
        <path className="fod-edge" d={`M${x(turns ?? 0)} ${y(least)}H${x(farthest)}`} />
        {most !== null && <path className="fod-edge" d={`M${x(turns ?? 0)} ${y(most)}H${x(farthest)}`} />}
        {turns !== null && <path className="fod-edge" d={`M${x(turns)} ${y(least)}V${y(most ?? highest)}`} />}
        {strip !== null && strip < highest && <path className="fod-limit" d={`M${x(0)} ${y(strip)}H${x(farthest)}`} />}
        <path className="fod-axis" d={`M${x(0)} ${ROOM.top}V${y(0)}H${x(farthest)}`} />
        {ticks(highest, torque.toShown).map(({ si, text }) => (
          <text key={text} className="fod-text" x={ROOM.left - 6} y={y(torque.toSi(si)) + 4} textAnchor="end">
            {text}
          </text>
        ))}
        {ticks(farthest, angle.toShown).map(({ si, text }) => (
          <text key={text} className="fod-text" x={x(angle.toSi(si))} y={HEIGHT - ROOM.bottom + 16} textAnchor="middle">
            {text}
          </text>
        ))}
        {drawn.map(({ run, traces }) => {
          const row = rowAt(traces.time, time)
          return (
            <g key={run.strategy} className="fod-line" style={{ stroke: `var(--strategy-${run.strategy})` }}>
              <polyline
                points={pointsOf(traces, x, y)}
                strokeDasharray={STRATEGIES.find(({ id }) => id === run.strategy)?.look.dash.join(' ')}
              />
              <circle className="fod-here" cx={x(traces.angle[row] ?? 0)} cy={y(traces.torque[row] ?? 0)} r={3.5} />
            </g>
          )
        })}
      </svg>
    </figure>
  )
}

/** From the start of the thread on, before which the closure only turns along. */
function onThread(run: RunView) {
  const { time, threadTorque, angle } = capTraces(run.traces!)
  const { startAngle } = capIn(run.scenario).chuck
  return { time, torque: threadTorque, angle: angle.map((value) => value - startAngle) }
}

type Columns = ReturnType<typeof onThread>
type Place = (value: number) => number

function pointsOf({ angle, torque }: Columns, x: Place, y: Place): string {
  const points: string[] = []
  for (let row = 0; row < angle.length; row++)
    if (angle[row]! >= 0) points.push(`${x(angle[row]!).toFixed(1)},${y(torque[row]!).toFixed(1)}`)
  return points.join(' ')
}

/** The chart in words. */
function summaryOf(scenario: Scenario, runs: RunView[], units: UnitSystem): string {
  const torque = quantityUnit('spindleTorque', units)
  const angle = quantityUnit('turns', units)
  const said = ({ toShown, symbol }: typeof torque, value: number) => withUnit(formatPlain(toShown(value), 3), symbol)
  const lines = runs.flatMap((run) => {
    if (!run.traces || run.rows < 2) return []
    const traces = onThread(run)
    const label = STRATEGIES.find(({ id }) => id === run.strategy)?.label ?? run.strategy
    return [`${label}: up to ${said(torque, greatest(traces.torque))}, after ${said(angle, greatest(traces.angle))}.`]
  })
  return `Torque over angle on the thread. Held against ${torqueLines(scenario, wordingOf(units)).join(', ')}. ${lines.join(' ')}`
}
