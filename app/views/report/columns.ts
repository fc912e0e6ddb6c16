/** What the report compares: one column a strategy that is shown on the bench, with its runs of the present scenario. */
import { useMemo } from 'react'
import { jobOf, type StrategyId, strategiesOn } from '../../../sim/index.ts'
import { useBeside } from '../../store/beside.ts'
import { type RunView, useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'

export interface Column {
  strategy: StrategyId
  label: string
  /** Undefined until there is a run of the present scenario. */
  run: RunView | undefined
  /** The same on the axis beside. */
  beside?: RunView | undefined
}

export function useColumns(): Column[] {
  const scenario = useScenario((state) => state.scenario)
  const runs = useResults((state) => state.runs)
  const shown = useView((state) => state.shown)
  const second = useResults((state) => state.beside)
  const fitted = useBeside()?.fitted
  const other = fitted?.ok ? fitted.scenario : null
  return useMemo(
    () =>
      strategiesOn(jobOf(scenario))
        .filter(({ id }) => shown.includes(id))
        .map(({ id, label }) => ({
          strategy: id,
          label,
          run: runs[id]?.scenario === scenario ? runs[id] : undefined,
          beside: second[id]?.scenario === other ? second[id] : undefined,
        })),
    [scenario, runs, shown, second, other],
  )
}

/** Whether nothing more will come of a column but its step error. */
export const ended = ({ run }: Pick<Column, 'run'>) => run !== undefined && run.status !== 'running'
