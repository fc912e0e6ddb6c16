/** Torque of the thread over the angle of the closure on it, with the window that it is held against. */
import { capIn, type Scenario, torqueLines, torqueWindow, wordingOf } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import {
  EffortChart,
  type JobChartProps,
  type Line,
  linesOf,
  type Places,
  saidIn,
  strategyLabel,
} from '../chart/EffortChart.tsx'
import { greatest } from '../chart/ticks.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { capTraces } from './traces.ts'

/** Past the nominal liner [rad], where no run has got further. */
const BEYOND = 1

export function TorqueOverAngle({ scenario, runs, time, units, width }: JobChartProps) {
  const { least, most } = torqueWindow(scenario)
  const lines = linesOf(runs, onThread)
  return (
    <EffortChart
      title="Torque over angle on the thread"
      summary={summaryOf(scenario, lines, units)}
      across={quantityUnit('turns', units)}
      effort={quantityUnit('spindleTorque', units)}
      farthest={capIn(scenario).closure.engagement + BEYOND}
      highest={Math.max(least, most ?? 0)}
      behind={(places) => <Window {...{ scenario, places }} />}
      {...{ lines, time, width }}
    />
  )
}

function Window({ scenario, places: { x, y, farthest, highest } }: { scenario: Scenario; places: Places }) {
  const { least, most, strip, turns } = torqueWindow(scenario)
  const [left, right] = [x(turns ?? 0), x(farthest)]
  const [top, bottom] = [y(most ?? highest), y(least)]
  return (
    <>
      <rect className="effort-band" x={left} width={right - left} y={top} height={bottom - top} />
      <path className="effort-edge" d={`M${left} ${bottom}H${right}`} />
      {most !== null && <path className="effort-edge" d={`M${left} ${top}H${right}`} />}
      {turns !== null && <path className="effort-edge" d={`M${left} ${bottom}V${top}`} />}
      {strip !== null && strip < highest && <path className="effort-limit" d={`M${x(0)} ${y(strip)}H${right}`} />}
    </>
  )
}

/** From the start of the thread on, before which the closure only turns along. */
function onThread({ traces, scenario }: RunView): Omit<Line, 'run'> {
  const { time, threadTorque, angle } = capTraces(traces!)
  const { startAngle } = capIn(scenario).chuck
  return { time, effort: threadTorque, across: angle.map((value) => value - startAngle) }
}

/** The chart in words. */
function summaryOf(scenario: Scenario, lines: Line[], units: UnitSystem): string {
  const torque = quantityUnit('spindleTorque', units)
  const angle = quantityUnit('turns', units)
  const told = lines.map(
    ({ run, across, effort }) =>
      `${strategyLabel(run)}: up to ${saidIn(torque, greatest(effort))}, after ${saidIn(angle, greatest(across))}.`,
  )
  return `Torque over angle on the thread. Held against ${torqueLines(scenario, wordingOf(units)).join(', ')}. ${told.join(' ')}`
}
