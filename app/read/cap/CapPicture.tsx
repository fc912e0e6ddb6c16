import { useMemo } from 'react'
import { Cap } from '../../picture/cap/Cap.tsx'
import { rowAt } from '../../picture/rowAt.ts'
import type { RunView } from '../../store/results.ts'
import { greatest } from '../chart/ticks.ts'
import type { RunPictureProps } from '../picture/picture.ts'
import { capTraces } from './traces.ts'

/** Jar, closure and chuck. */
export function CapPicture({ run, runs, time, width, height, label }: RunPictureProps) {
  const most = useMemo(() => mostOf(runs), [runs])
  return <Cap scenario={run.scenario} frame={capFrame(run, time)} {...{ label, width, height, ...most }} />
}

export function capFrame({ traces, rows, result }: RunPictureProps['run'], time: number) {
  const columns = traces && rows > 0 ? capTraces(traces) : null
  const row = columns ? rowAt(columns.time, rows, time).index : 0
  const at = (name: 'travel' | 'angle' | 'torque' | 'preload') => columns?.[name][row] ?? 0
  const strip = (result?.events as { strip?: number | null } | undefined)?.strip ?? null
  const stripped = strip !== null && time >= strip
  return { travel: at('travel'), angle: at('angle'), torque: at('torque'), preload: at('preload'), stripped }
}

/** The same scale in every lane. */
function mostOf(runs: RunView[]) {
  const columns = runs.flatMap(({ traces, rows }) => (traces && rows > 0 ? [capTraces(traces)] : []))
  return {
    mostTorque: Math.max(0, ...columns.map(({ torque }) => greatest(torque))),
    mostPreload: Math.max(0, ...columns.map(({ preload }) => greatest(preload))),
  }
}
