/** What a strategy does to a closure, its torque and turns at the instant of the cursor; on the bench and in lessons. */
import { useMemo } from 'react'
import { capIn, type Scenario } from '../../../sim/index.ts'
import { Cap } from '../../picture/cap/Cap.tsx'
import { rowAt } from '../../picture/rowAt.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { greatest } from '../chart/ticks.ts'
import { JobLane, type JobLaneProps } from '../stage/JobLane.tsx'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { capTraces } from './traces.ts'

export function CapLane({ run, runs, width, height }: JobLaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const most = useMemo(() => mostOf(runs), [runs])
  const traces = run.traces && run.rows > 0 ? capTraces(run.traces) : null
  const row = traces ? rowAt(traces.time, run.rows, time).index : 0
  const at = (name: 'travel' | 'angle' | 'torque' | 'preload') => traces?.[name][row] ?? 0
  const strip = (run.result?.events as { strip?: number | null } | undefined)?.strip ?? null
  const stripped = strip !== null && time >= strip
  const frame = { travel: at('travel'), angle: at('angle'), torque: at('torque'), preload: at('preload'), stripped }
  const turns = quantityUnit('turns', units)
  const turned = Math.max(0, frame.angle - capIn(run.scenario).chuck.startAngle)
  const foot = `${withUnit(formatFigure(turns.toShown(turned)), turns.symbol)} on the thread, preload ${forceText(frame.preload, units)}`
  const shows = 'jar, thread, closure and chuck in half section'
  return (
    <JobLane {...{ run, width, foot, shows }} effort={frame.torque} quantity="spindleTorque">
      {(label) => <Cap scenario={run.scenario} {...{ label, frame, width, height, ...most }} />}
    </JobLane>
  )
}

/** The same scale in every lane. */
function mostOf(runs: JobLaneProps['runs']) {
  const columns = runs.flatMap(({ traces, rows }) => (traces && rows > 0 ? [capTraces(traces)] : []))
  return {
    mostTorque: Math.max(0, ...columns.map(({ torque }) => greatest(torque))),
    mostPreload: Math.max(0, ...columns.map(({ preload }) => greatest(preload))),
  }
}

function forceText(value: number, units: UnitSystem): string {
  const force = quantityUnit('force', units)
  return withUnit(formatFigure(force.toShown(value)), force.symbol)
}

/** The closure before its run, where nothing has been turned. */
export function OpenCap({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const frame = { travel: 0, angle: 0, torque: 0, preload: 0, stripped: false }
  const label = 'Jar, closure and chuck in half section, before the run.'
  return <Cap {...{ scenario, frame, label, width, height }} mostTorque={0} mostPreload={0} />
}
