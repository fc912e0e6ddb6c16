/** Tension over time, with the window that it is held against and the speed of the line below. */
import { type Scenario, tensionLines, tensionWindow, wordingOf } from '../../../sim/index.ts'
import {
  EffortChart,
  type JobChartProps,
  type Line,
  linesOf,
  type Places,
  pointsOf,
  saidIn,
  strategyLabel,
} from '../chart/EffortChart.tsx'
import { greatest } from '../chart/ticks.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { webTraces } from './traces.ts'
import './tensionOverTime.css'

/** Height of the strip of the line's speed, and what lies between it and the tension [px]. */
const STRIP = 44
const GAP = 14
const SECONDS = { symbol: 's', toShown: (time: number) => time, toSi: (time: number) => time }

export function TensionOverTime({ scenario, runs, time, units, width }: JobChartProps) {
  const lines = linesOf(runs, ({ traces }) => {
    const { time, tension } = webTraces(traces!)
    return { time, across: time, effort: tension }
  })
  return (
    <EffortChart
      title="Tension over time"
      summary={summaryOf(scenario, lines, units)}
      across={SECONDS}
      effort={quantityUnit('force', units)}
      farthest={scenario.run.duration}
      highest={tensionWindow(scenario).most}
      strip={STRIP + GAP}
      exactly
      behind={(places) => (
        <>
          <Window {...{ scenario, places }} />
          <LineStrip first={lines[0]} {...{ places, units }} />
        </>
      )}
      over={({ x, bottom }) => <path className="tension-cursor" d={`M${x(time)} 8V${bottom}`} />}
      {...{ lines, time, width }}
    />
  )
}

function Window({ scenario, places: { x, y, farthest, highest } }: { scenario: Scenario; places: Places }) {
  const { least, most, from, tears } = tensionWindow(scenario)
  const [left, right] = [x(from), x(farthest)]
  return (
    <>
      <rect className="effort-band" x={left} width={right - left} y={y(most)} height={y(least) - y(most)} />
      <path className="effort-edge" d={`M${left} ${y(most)}V${y(least)}H${right}`} />
      <path className="tension-most" d={`M${x(0)} ${y(most)}H${right}`} />
      {tears !== null && tears < highest && <path className="effort-limit" d={`M${x(0)} ${y(tears)}H${right}`} />}
    </>
  )
}

interface StripProps {
  first: Line | undefined
  places: Places
  units: UnitSystem
}

/** The speed of the line, the same for every strategy. */
function LineStrip({ first, places: { x, farthest, bottom }, units }: StripProps) {
  const speed = quantityUnit('speed', units)
  const { lineSpeed, time } = first
    ? webTraces(first.run.traces!)
    : { lineSpeed: new Float64Array(), time: new Float64Array() }
  const top = greatest(lineSpeed)
  const y = (at: number) => bottom - (top > 0 ? (at / top) * (STRIP - 14) : 0)
  return (
    <g>
      <path className="effort-axis" d={`M${x(0)} ${bottom - STRIP}V${bottom}H${x(farthest)}`} />
      {first && <polyline className="tension-line" points={pointsOf(time, lineSpeed, x, y)} />}
      <text className="effort-text" x={x(0) + 6} y={bottom - STRIP + 10}>
        {top > 0 ? `line, up to ${saidIn(speed, top)}` : 'line, which stands still'}
      </text>
    </g>
  )
}

/** The chart in words. */
function summaryOf(scenario: Scenario, lines: Line[], units: UnitSystem): string {
  const force = quantityUnit('force', units)
  const told = lines.map(
    ({ run, effort }) =>
      `${strategyLabel(run)}: up to ${saidIn(force, greatest(effort))}, at the end ${saidIn(force, effort.at(-1) ?? 0)}.`,
  )
  return `Tension over time. Held against ${tensionLines(scenario, wordingOf(units)).join(', ')}. ${told.join(' ')}`
}
