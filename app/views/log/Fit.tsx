/** The fit: what is free, how far it is, the values found with their intervals, and what the logs do not tell. */
import { fitFaultText, freeable, freeName, type Scenario } from '../../../sim/index.ts'
import { useLog } from '../../store/log.ts'
import { useScenario } from '../../store/scenario.ts'
import { Button } from '../../ui/Button.tsx'
import { Segments } from '../../ui/Choice.tsx'
import type { FitTold, Unfit } from '../../worker/log-messages.ts'
import { Values } from './Values.tsx'

export const unfitText = (why: Unfit) =>
  'fault' in why ? fitFaultText(useScenario.getState().scenario.job, why.fault) : why.message

interface Props {
  /** The logs can be fitted as they stand. */
  ready: boolean
  /** One of them meets the work. */
  contact: boolean
  /** What was found, where it still is about what is shown. */
  found: FitTold | null
}

export function Fit({ ready, contact, found }: Props) {
  const scenario = useScenario((state) => state.scenario)
  const { fit, startFit, stopFit } = useLog()
  const { status, done, why } = fit
  const running = status === 'running'
  const none = useScenario(({ logs }) => logs.wish.free?.length === 0)
  return (
    <section className="log-fit" aria-label="Fit">
      <h2>Fit</h2>
      <Free scenario={scenario} contact={contact} />
      <div className="log-buttons">
        {running ? (
          <Button onClick={stopFit}>Cancel</Button>
        ) : (
          <Button disabled={!ready || none} onClick={() => startFit(scenario)}>
            {found ? 'Fit anew' : 'Fit the model to the logs'}
          </Button>
        )}
        <span role="status">
          {running && (
            <>
              <progress max={1} value={done} aria-label="Fit" /> {Math.floor(100 * done)} %
            </>
          )}
          {status === 'stopped' && 'The fit was cancelled.'}
          {none && 'Nothing is free.'}
        </span>
      </div>
      {why && (
        <p role="alert" className="log-fault">
          There is no fit: {unfitText(why)}.
        </p>
      )}
      {fit.found && !found && !running && (
        <p className="log-note">The last fit was of other logs, settings or values than these: it is not shown.</p>
      )}
      {found && <Found found={found} />}
    </section>
  )
}

const HOW = [
  { value: 'auto', label: 'What the logs can tell' },
  { value: 'own', label: 'As picked' },
] as const

function Free({ scenario, contact }: { scenario: Scenario; contact: boolean }) {
  const free = useScenario(({ logs }) => logs.wish.free)
  const setWish = useLog((state) => state.setWish)
  const all = freeable(scenario, contact)
  const usual = all.filter((path) => USUAL.test(path))
  return (
    <>
      <Segments
        label="What is free"
        options={HOW}
        value={free === null ? 'auto' : 'own'}
        onChoose={(value) => setWish({ free: value === 'auto' ? null : usual })}
      />
      {free !== null && (
        <fieldset className="log-free">
          <legend className="sr-only">Free quantities</legend>
          {all.map((path) => (
            <label key={path}>
              <input
                type="checkbox"
                checked={free.includes(path)}
                onChange={({ target }) =>
                  setWish({ free: all.filter((each) => (each === path ? target.checked : free.includes(each))) })
                }
              />{' '}
              {freeName(scenario, path)}
            </label>
          ))}
        </fieldset>
      )}
    </>
  )
}

/** What is picked at first. */
const USUAL =
  /carriageMass$|\.coulomb$|\.viscous$|currentOffset$|part\.width$|part\.stiffness$|ram\.gap$|interference$|startAngle$|engagement$|liner\.stiffness$|web\.modulus$|web\.slack$/

function Found({ found: { values, untold, scenario, settled, runs } }: { found: FitTold }) {
  return (
    <>
      <Values {...{ values, untold, scenario }} />
      <p className="log-note">
        {runs} runs of the simulator.{' '}
        {!settled && 'The fit ended before it had settled: fit anew from the values on the bench once they are used. '}
        Intervals hold as far as the model does: what it leaves unexplained stands beneath each trace.
      </p>
    </>
  )
}
