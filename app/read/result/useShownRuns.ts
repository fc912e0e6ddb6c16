import { STRATEGIES } from '../../../sim/index.ts'
import { type Runs, type RunView, useResults } from '../../store/results.ts'
import { useView } from '../../store/view.ts'

/** The newest runs of the strategies that are shown, in the order of the registry. */
export const useShownRuns = (): RunView[] => useShown(useResults((state) => state.runs))

/** The same on the axis beside that of the bench; none without one. */
export const useBesideRuns = (): RunView[] => useShown(useResults((state) => state.beside))

function useShown(runs: Runs): RunView[] {
  const shown = useView((state) => state.shown)
  return STRATEGIES.flatMap(({ id }) => (shown.includes(id) && runs[id] ? [runs[id]] : []))
}
