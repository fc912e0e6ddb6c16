/** One lane of a web: line, gauge roll, idlers and driven roll by one strategy, its tension and slack at the instant of the cursor. */
import { useMemo } from 'react'
import { type Scenario, tensionWindow, webIn } from '../../../sim/index.ts'
import { rowAt } from '../../picture/rowAt.ts'
import { Web } from '../../picture/web/Web.tsx'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { JobLane, type JobLaneProps } from '../stage/JobLane.tsx'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { lineWay, webTraces } from './traces.ts'

export function WebLane({ run, runs, width, height }: JobLaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const mostTension = useMemo(() => mostOf(runs), [runs])
  const frame = frameOf(run, time)
  const shows = 'line, gauge roll, idlers and driven roll in section'
  return (
    <JobLane {...{ run, width, shows }} effort={frame.tension} quantity="force" foot={footOf(frame, units)}>
      {(label) => <Web scenario={run.scenario} {...{ label, frame, width, height, mostTension }} />}
    </JobLane>
  )
}

/** Tension for which an arrow is as long as it may be [N]. */
function mostOf(runs: RunView[]): number {
  const reached = runs.map(
    ({ result }) => (result?.metrics as { mostTension?: number | null } | undefined)?.mostTension ?? 0,
  )
  return Math.max(1e-9, ...runs.map(({ scenario }) => tensionWindow(scenario).least), ...reached)
}

type Name = Exclude<keyof ReturnType<typeof webTraces>, 'time'>

function frameOf({ traces, rows, result, scenario }: RunView, time: number) {
  const columns = traces && rows > 0 ? webTraces(traces) : null
  const row = columns ? rowAt(columns.time, rows, time).index : 0
  const at = (name: Name) => columns?.[name][row] ?? 0
  const torn = (result?.events as { torn?: number | null } | undefined)?.torn ?? null
  return {
    travel: at('travel'),
    way: traces && columns ? (lineWay(traces)[row] ?? 0) : 0,
    tension: at('tension'),
    rollTension: at('rollTension'),
    slack: at('slack'),
    radius: at('radius'),
    lineSpeed: at('lineSpeed'),
    torn: torn !== null && time >= torn,
    scenario,
  }
}

function footOf({ lineSpeed, slack, radius, torn }: ReturnType<typeof frameOf>, units: UnitSystem): string {
  const [speed, length] = [quantityUnit('speed', units), quantityUnit('length', units)]
  const said = ({ toShown, symbol }: typeof speed, value: number) => withUnit(formatFigure(toShown(value)), symbol)
  const state = torn ? 'torn' : slack > 0 ? `slack by ${said(length, slack)}` : `roll radius ${said(length, radius)}`
  return `Line at ${said(speed, lineSpeed)}, ${state}`
}

/** The web before its run, which hangs by its slack. */
export function OpenWeb({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const { web, roll } = webIn(scenario)
  const still = { travel: 0, way: 0, tension: 0, rollTension: 0, slack: web.slack, radius: roll.radius, torn: false }
  const label = 'Line, gauge roll, idlers and driven roll in section, before the run.'
  return <Web {...{ scenario, label, width, height }} frame={still} mostTension={0} />
}
