import { jobWords } from '../../../sim/index.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'

/** Where there is no run to show. */
export function NoRun() {
  const none = useView((state) => state.shown.length === 0)
  const scenario = useScenario((state) => state.scenario)
  return (
    <p className="present-none">
      {none
        ? 'No strategy is shown: choose one on the bench.'
        : `Nothing has been ${jobWords(scenario).study.acted} yet: the first run is on its way.`}
    </p>
  )
}
