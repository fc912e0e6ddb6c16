import { STRATEGIES } from '../../../sim/index.ts'
import { type RunView, useResults } from '../../store/results.ts'
import { useView } from '../../store/view.ts'

/** The newest runs of the strategies that are shown, in the order of the registry. */
export function useShownRuns(): RunView[] {
  const runs = useResults((state) => state.runs)
  const shown = useView((state) => state.shown)
  return STRATEGIES.flatMap(({ id }) => (shown.includes(id) && runs[id] ? [runs[id]] : []))
}
