import { axesFor } from '../../../sim/index.ts'
import { useScenario } from '../../store/scenario.ts'
import { Menu } from '../../ui/Menu.tsx'

/** Another axis to be run beside that of the bench. */
export function BesideChooser() {
  const none = useScenario((state) => state.beside === null)
  const job = useScenario((state) => state.scenario.job)
  const items = axesFor(job).map(({ title, actuator }) => ({
    label: title,
    act: () => useScenario.getState().setBeside({ title, actuator }),
  }))
  return <Menu align="end" label={none ? 'Second axis' : 'Other second axis'} items={items} />
}
