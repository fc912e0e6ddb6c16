/** One lane of a press: ram, bushing and bore by one strategy, its force and depth at the instant of the cursor; on the bench and in lessons. */
import { useMemo } from 'react'
import { jointWindow, type Scenario } from '../../../sim/index.ts'
import { Press } from '../../picture/press/Press.tsx'
import { rowAt } from '../../picture/rowAt.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { JobLane, type JobLaneProps } from '../stage/JobLane.tsx'
import { quantityUnit } from '../units.ts'
import { tracesOf } from './traces.ts'

export function PressLane({ run, runs, width, height }: JobLaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const mostForce = useMemo(() => mostOf(runs), [runs])
  const traces = run.traces && run.rows > 0 ? tracesOf(run.traces) : null
  const row = traces ? rowAt(traces.time, run.rows, time).index : 0
  const at = (name: 'travel' | 'depth' | 'force' | 'shoulderForce') => traces?.[name][row] ?? 0
  const frame = { travel: at('travel'), depth: at('depth'), force: at('force'), shoulder: at('shoulderForce') }
  const length = quantityUnit('length', units)
  const foot = `Depth ${withUnit(formatFigure(length.toShown(Math.max(0, frame.depth))), length.symbol)}`
  return (
    <JobLane {...{ run, width, foot }} effort={frame.force} quantity="force" shows="ram, bushing and bore in section">
      {(label) => <Press scenario={run.scenario} {...{ label, frame, width, height, mostForce }} />}
    </JobLane>
  )
}

/** Force for which an arrow is as long as it may be [N]. */
function mostOf(runs: JobLaneProps['runs']): number {
  const wanted = runs.map(({ scenario }) => jointWindow(scenario).seat.least ?? 0)
  return Math.max(1e-9, ...wanted, ...runs.map(({ result }) => result?.metrics.peakForce ?? 0))
}

/** The joint before its run. */
export function OpenPress({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const frame = { travel: 0, depth: 0, force: 0, shoulder: 0 }
  const label = 'Ram, bushing and bore in section, before the run.'
  return <Press {...{ scenario, frame, label, width, height }} mostForce={0} />
}
