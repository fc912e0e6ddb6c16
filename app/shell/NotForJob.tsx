/** Stands in the place of a view that does not take the job on the bench. */
import { JOBS, type JobId, jobOf } from '../../sim/index.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import { takes, VIEWS, type View } from '../views/index.ts'

export function NotForJob({ view }: { view: View }) {
  const scenario = useScenario((state) => state.scenario)
  const job = jobOf(scenario).label.toLowerCase()
  const others = VIEWS.filter((each) => takes(each, scenario.job)).map(({ label }) => label)
  return (
    <section className="prose not-for-job">
      <h1>{view.label}</h1>
      <p>
        “{scenario.name}” is a {job}, and {view.label} takes {taken(view)} only. A {job} is taken by {listed(others)}.
        The command line answers for it with <code>{scenario.job}</code>, <code>why</code>, <code>rescue</code>,{' '}
        <code>spread</code>, <code>map</code> and <code>rare</code>.
      </p>
      {view.id !== 'bench' && <Button onClick={() => useView.setState({ view: 'bench' })}>Back to the bench</Button>}
    </section>
  )
}

/** "grips", or the jobs by their names. */
function taken({ jobs = ['grip'] }: View): string {
  const some = jobs === 'any' ? (Object.keys(JOBS) as JobId[]) : jobs
  return some.length === 1 && some[0] === 'grip' ? 'grips' : listed(some.map((id) => JOBS[id].label.toLowerCase()))
}

const listed = (names: string[]) =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
