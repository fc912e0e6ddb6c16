/** Stands in the place of a view that does not take the job on the bench. */
import { jobOf } from '../../sim/index.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import type { View } from '../views/index.ts'

export function NotForJob({ view }: { view: Pick<View, 'id' | 'label'> }) {
  const scenario = useScenario((state) => state.scenario)
  const job = jobOf(scenario).label.toLowerCase()
  return (
    <section className="prose not-for-job">
      <h1>{view.label}</h1>
      <p>
        “{scenario.name}” is a {job}, and {view.label} takes grips only. The command line answers for a {job} with{' '}
        <code>{job}</code> and <code>why</code>.
      </p>
      {view.id !== 'bench' && <Button onClick={() => useView.setState({ view: 'bench' })}>Back to the bench</Button>}
    </section>
  )
}
