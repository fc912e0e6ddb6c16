/** Force of the ram over depth of the bushing, with the band that it is held against. */
import { jointWindow, type Scenario } from '../../../sim/index.ts'
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
import { tracesOf } from './traces.ts'

export function ForceOverDepth({ scenario, runs, time, units, width }: JobChartProps) {
  const { band, seat, depth } = jointWindow(scenario)
  const lines = linesOf(runs, ({ traces }) => {
    const { time, depth, force } = tracesOf(traces!)
    return { time, across: depth, effort: force }
  })
  return (
    <EffortChart
      title="Force over depth"
      summary={summaryOf(scenario, lines, units)}
      across={quantityUnit('length', units)}
      effort={quantityUnit('force', units)}
      farthest={Math.max(depth.least, band.at(-1)?.depth ?? 0)}
      highest={Math.max(seat.least ?? 0, ...band.map(({ most }) => most))}
      behind={(places) => <Band {...{ scenario, places }} />}
      {...{ lines, time, width }}
    />
  )
}

function Band({ scenario, places: { x, y, farthest, highest } }: { scenario: Scenario; places: Places }) {
  const { band, most } = jointWindow(scenario)
  const edge = (of: 'least' | 'most') => band.map((point) => `${x(point.depth)},${y(point[of])}`)
  return (
    <>
      {band.length > 1 && (
        <>
          <polygon className="effort-band" points={[...edge('least'), ...edge('most').reverse()].join(' ')} />
          <polyline className="effort-edge" points={edge('least').join(' ')} />
          <polyline className="effort-edge" points={edge('most').join(' ')} />
        </>
      )}
      {most !== null && most < highest && <path className="effort-limit" d={`M${x(0)} ${y(most)}H${x(farthest)}`} />}
    </>
  )
}

/** The chart in words. */
function summaryOf(scenario: Scenario, lines: Line[], units: UnitSystem): string {
  const { band } = jointWindow(scenario)
  const force = quantityUnit('force', units)
  const length = quantityUnit('length', units)
  const told = lines.map(
    ({ run, across, effort }) =>
      `${strategyLabel(run)}: up to ${saidIn(force, greatest(effort))}, down to ${saidIn(length, greatest(across))}.`,
  )
  const [first, last] = [band[0], band.at(-1)]
  const held =
    first && last && band.length > 1
      ? `The band runs from ${saidIn(force, first.least)} to ${saidIn(force, first.most)} at ${saidIn(length, first.depth)}, to ${saidIn(force, last.least)} to ${saidIn(force, last.most)} at ${saidIn(length, last.depth)}.`
      : 'There is no band.'
  return `Force of the ram over depth of the bushing. ${held} ${told.join(' ')}`
}
