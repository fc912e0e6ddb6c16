import { faultLine } from '../../../sim/index.ts'
import { useBeside } from '../../store/beside.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { putAxis } from '../scenario/putAxis.ts'
import { fittedSentences, fittedSettings } from './fitted.ts'
import { axisTitle } from './names.ts'
import { Ring } from './Ring.tsx'

/** Which axis stands beside that of the bench, what was fitted for it, and how it goes away; nothing without one. */
export function BesideLine() {
  const beside = useBeside()
  const scenario = useScenario((state) => state.scenario)
  if (!beside) return null
  const { axis, fitted } = beside
  return (
    <section className="beside-line" aria-label="Two axes side by side">
      <p>
        Side by side: <strong>{axisTitle(scenario)}</strong> on the bench,{' '}
        <strong>
          <Ring />
          {axis.title}
        </strong>{' '}
        beside it.
      </p>
      <Button quiet onClick={swap}>
        Swap
      </Button>
      <Button quiet onClick={() => useScenario.getState().setBeside(null)}>
        Remove<span className="sr-only"> the axis beside</span>
      </Button>
      {fitted.ok ? (
        <Fitted />
      ) : (
        <p role="alert">
          It cannot be run with the rest of this job: {fitted.faults.slice(0, 2).map(faultLine).join('; ')}.
        </p>
      )}
    </section>
  )
}

/** The axis beside goes on the bench, fitted to the job, and that of the bench stands beside it. One undo takes it back. */
function swap() {
  const { scenario, beside } = useScenario.getState()
  if (beside) putAxis(beside, { title: axisTitle(scenario), actuator: scenario.actuator })
}

function Fitted() {
  const beside = useBeside()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  if (!beside?.fitted.ok) return null
  const settings = fittedSettings(scenario, beside.fitted.scenario, units)
  return (
    <details>
      <summary>What was fitted to it</summary>
      <p>{fittedSentences(scenario, beside.fitted.scenario, units).join(' ')}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Setting</th>
            <th scope="col">On the bench</th>
            <th scope="col">
              <Ring />
              Beside
            </th>
          </tr>
        </thead>
        <tbody>
          {settings.map(({ path, label, own, fitted }) => (
            <tr key={path}>
              <th scope="row">{label}</th>
              <td>{own}</td>
              <td>{fitted}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}
