import { useEffect, useState } from 'react'
import type { ComparedAxis, Scenario } from '../../../sim/index.ts'
import { startStudy } from '../../worker/study.ts'

export interface Axes {
  rows: ComparedAxis[]
  status: 'running' | 'done' | 'failed'
  message: string
}

/** Rest after a change before the axes are compared anew [ms]. */
const REST = 250

/** Every axis under the scenario, as the study hands them out; older rows stay in sight until new ones replace them. */
export function useAxes(scenario: Scenario): Axes {
  const [axes, setAxes] = useState<Axes>({ rows: [], status: 'running', message: '' })
  useEffect(() => {
    let stop = () => {}
    const rest = setTimeout(() => {
      setAxes((before) => ({ ...before, status: 'running' }))
      stop = startStudy('axes', scenario, {
        item: (row) =>
          setAxes((before) => ({ ...before, rows: [...before.rows.filter(({ id }) => id !== row.id), row] })),
        done: () => setAxes((before) => ({ ...before, status: 'done' })),
        failed: (message) => setAxes((before) => ({ ...before, status: 'failed', message })),
      })
    }, REST)
    return () => {
      clearTimeout(rest)
      stop()
    }
  }, [scenario])
  return axes
}
