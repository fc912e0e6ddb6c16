/** The effort that a job holds against its window: what its runs have recorded of it, and the window in words. */
import { jobOf, type Scenario, shownAs } from '../../../sim/index.ts'
import { rowAt } from '../../picture/rowAt.ts'
import type { RunView } from '../../store/results.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { effortUnit, type UnitSystem } from '../units.ts'

type Recorded = Pick<RunView, 'scenario' | 'traces' | 'rows'>

/** Columns that are held against the window, the one that is drawn first; none where nothing is recorded. */
export function effortsOf({ scenario, traces, rows }: Recorded): Float64Array[] {
  if (!traces || rows === 0) return []
  const columns = traces as unknown as Record<string, Float64Array | undefined>
  return jobOf(scenario).judged.flatMap((id) => columns[id] ?? [])
}

/** The effort in the row of an instant [SI]; null: nothing is recorded. */
export function effortAt(run: Recorded, time: number): number | null {
  const columns = effortsOf(run)
  if (!run.traces || columns.length === 0) return null
  const { index } = rowAt(run.traces.time, run.rows, time)
  return Math.max(...columns.map((column) => column[index]!))
}

/** The highest effort of a run, as its figures have it [SI]. */
export function highestEffort({ scenario, result }: Pick<RunView, 'scenario' | 'result'>): number {
  const metrics: Record<string, number | null> = result?.metrics ?? {}
  return Math.max(0, ...jobOf(scenario).study.histograms.map((id) => metrics[id] ?? 0))
}

/** "drops below 11.2 N", "breaks above 65 N"; null: no such edge. */
export function limitWords(scenario: Scenario, units: UnitSystem): { least: string | null; most: string | null } {
  const { symbol, toShown } = effortUnit(scenario, units)
  const { least, most } = jobOf(scenario).study.window(scenario)
  const { below, above } = shownAs(scenario)
  const effort = (value: number) => withUnit(formatPlain(toShown(value), 3), symbol)
  return {
    least: least === null ? null : `${below} below ${effort(least)}`,
    most: most === null ? null : `${above(scenario)} above ${effort(most)}`,
  }
}
