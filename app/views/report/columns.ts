/** What the report compares: one column a strategy that is shown on the bench, with its run of the present scenario. */
import { useMemo } from 'react'
import { STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import { type RunView, useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'

export interface Column {
  strategy: StrategyId
  label: string
  /** Undefined until there is a run of the present scenario. */
  run: RunView | undefined
}

export function useColumns(): Column[] {
  const scenario = useScenario((state) => state.scenario)
  const runs = useResults((state) => state.runs)
  const shown = useView((state) => state.shown)
  return useMemo(
    () =>
      STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ id, label }) => ({
        strategy: id,
        label,
        run: runs[id]?.scenario === scenario ? runs[id] : undefined,
      })),
    [scenario, runs, shown],
  )
}

/** Whether nothing more will come of a column but its step error. */
export const ended = ({ run }: Column) => run !== undefined && run.status !== 'running'
