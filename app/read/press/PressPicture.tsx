import { useMemo } from 'react'
import { jointWindow } from '../../../sim/index.ts'
import { Press, type PressFrame } from '../../picture/press/Press.tsx'
import { rowAt } from '../../picture/rowAt.ts'
import type { RunView } from '../../store/results.ts'
import type { RunPictureProps } from '../picture/picture.ts'
import { tracesOf } from './traces.ts'

/** Ram, bushing and bore. */
export function PressPicture({ run, runs, time, width, height, label }: RunPictureProps) {
  const mostForce = useMemo(() => mostOf(runs), [runs])
  return <Press scenario={run.scenario} frame={pressFrame(run, time)} {...{ label, width, height, mostForce }} />
}

export function pressFrame({ traces, rows }: RunPictureProps['run'], time: number): PressFrame {
  const columns = traces && rows > 0 ? tracesOf(traces) : null
  const row = columns ? rowAt(columns.time, rows, time).index : 0
  const at = (name: 'travel' | 'depth' | 'force' | 'shoulderForce') => columns?.[name][row] ?? 0
  return { travel: at('travel'), depth: at('depth'), force: at('force'), shoulder: at('shoulderForce') }
}

/** Force for which an arrow is as long as it may be [N]. */
function mostOf(runs: RunView[]): number {
  const wanted = runs.map(({ scenario }) => jointWindow(scenario).seat.least ?? 0)
  return Math.max(1e-9, ...wanted, ...runs.map(({ result }) => result?.metrics.peakForce ?? 0))
}
