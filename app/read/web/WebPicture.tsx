import { useMemo } from 'react'
import { tensionWindow, webIn } from '../../../sim/index.ts'
import { rowAt } from '../../picture/rowAt.ts'
import { Web } from '../../picture/web/Web.tsx'
import type { RunView } from '../../store/results.ts'
import type { RunPictureProps } from '../picture/picture.ts'
import { lineWay, webTraces } from './traces.ts'

/** Line, gauge roll, idlers and driven roll. */
export function WebPicture({ run, runs, time, width, height, label }: RunPictureProps) {
  const mostTension = useMemo(() => mostOf(runs), [runs])
  return <Web scenario={run.scenario} frame={webFrame(run, time)} {...{ label, width, height, mostTension }} />
}

/** Tension for which an arrow is as long as it may be [N]. */
function mostOf(runs: RunView[]): number {
  const reached = runs.map(
    ({ result }) => (result?.metrics as { mostTension?: number | null } | undefined)?.mostTension ?? 0,
  )
  return Math.max(1e-9, ...runs.map(({ scenario }) => tensionWindow(scenario).least), ...reached)
}

type Name = Exclude<keyof ReturnType<typeof webTraces>, 'time'>

/** Before its run the web hangs by its slack. */
export function webFrame({ traces, rows, result, scenario }: RunPictureProps['run'], time: number) {
  const { web, roll } = webIn(scenario)
  const columns = traces && rows > 0 ? webTraces(traces) : null
  const row = columns ? rowAt(columns.time, rows, time).index : 0
  const at = (name: Name) => columns?.[name][row] ?? 0
  const torn = (result?.events as { torn?: number | null } | undefined)?.torn ?? null
  return {
    travel: at('travel'),
    way: traces && columns ? (lineWay(traces)[row] ?? 0) : 0,
    tension: at('tension'),
    rollTension: at('rollTension'),
    slack: columns ? at('slack') : web.slack,
    radius: columns ? at('radius') : roll.radius,
    lineSpeed: at('lineSpeed'),
    torn: torn !== null && time >= torn,
  }
}
