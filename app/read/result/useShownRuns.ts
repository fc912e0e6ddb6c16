import { useMemo } from 'react'
import { STRATEGIES } from '../../../sim/index.ts'
import { type Runs, type RunView, useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'

/** The newest runs of the strategies that are shown, in the order of the registry. */
export const useShownRuns = (): RunView[] => useShown(useResults((state) => state.runs))

/** The same on the axis beside that of the bench; none without one. */
export const useBesideRuns = (): RunView[] => useShown(useResults((state) => state.beside))

/** Runs of another job are those of what was on the bench before. */
function useShown(runs: Runs): RunView[] {
  const shown = useView((state) => state.shown)
  const job = useScenario((state) => state.scenario.job)
  return useMemo(
    () =>
      STRATEGIES.flatMap(({ id }) => {
        const run = shown.includes(id) ? runs[id] : undefined
        return run?.scenario.job === job ? [run] : []
      }),
    [shown, job, runs],
  )
}
