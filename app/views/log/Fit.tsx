/** The fit: what is free, how far it is, the values found with their intervals, and what the logs do not tell. */
import {
  fitFaultText,
  fitNote,
  freeable,
  freeName,
  inPlainSpaces,
  intervalText,
  LOG_DELAY,
  notesWith,
  quantityAt,
  readPath,
  type Scenario,
  shownUnit,
  untoldText,
  wordingOf,
} from '../../../sim/index.ts'
import { editMany } from '../../parameters/refusal.ts'
import type { UnitSystem } from '../../read/units.ts'
import { lentOf } from '../../store/lent.ts'
import { useLog } from '../../store/log.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Segments } from '../../ui/Choice.tsx'
import { formatPlain, NO_FIGURE, withUnit } from '../../ui/format.ts'
import type { FitTold, Unfit } from '../../worker/log-messages.ts'

export const unfitText = (why: Unfit) => ('fault' in why ? fitFaultText(why.fault) : why.message)

interface Props {
  /** The logs can be fitted as they stand. */
  ready: boolean
  /** A part stands between the jaws in one of them. */
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
const USUAL = /carriageMass$|\.coulomb$|\.viscous$|currentOffset$|part\.width$|part\.stiffness$/

/** A fitted quantity in its unit. */
function writerOf(scenario: Scenario, path: string, system: UnitSystem) {
  const source = path === LOG_DELAY ? { unit: 's', shown: 'ms' } : quantityAt(scenario, path)!
  const unit = shownUnit(source, system, scenario.part.exponent)
  return (value: number) => withUnit(formatPlain(unit.toShown(value), 4), unit.symbol)
}

function Found({ found }: { found: FitTold }) {
  const system = useView((state) => state.units)
  const { values, untold, scenario, settled, runs } = found
  const words = wordingOf(system)
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="log-scroll" tabIndex={0} aria-label="Values found">
        <table className="log-values">
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              <th scope="col">was</th>
              <th scope="col">is</th>
              <th scope="col">95 % interval</th>
            </tr>
          </thead>
          <tbody>
            {values.map((each) => {
              const write = writerOf(scenario, each.path, system)
              const doubted = untold.some(({ kind, paths }) => kind !== 'ratio' && paths.some((p) => p === each.path))
              return (
                <tr key={each.path} data-doubted={doubted}>
                  <th scope="row">{freeName(scenario, each.path)}</th>
                  <td>{each.from === null ? NO_FIGURE : write(each.from)}</td>
                  <td>{write(each.value)}</td>
                  <td>{intervalText(each, write)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </section>
      {untold.length > 0 && (
        <ul className="log-untold" aria-label="What the logs do not tell">
          {untold.map((each) => (
            <li key={JSON.stringify(each)}>{untoldText(scenario, each, words)}</li>
          ))}
        </ul>
      )}
      <p className="log-note">
        {runs} runs of the simulator.{' '}
        {!settled && 'The fit ended before it had settled: fit anew from the values on the bench once they are used. '}
        Intervals hold as far as the model does: what it leaves unexplained stands beneath each trace.
      </p>
    </>
  )
}

/** What puts the fitted values on the bench. */
export function UseIt({ found, from }: { found: FitTold; from: Scenario }) {
  const bench = useScenario((state) => state.scenario)
  const { edits } = lentOf('', found.scenario, from)
  const used = edits.every(({ path, value }) => Object.is(readPath(bench, path), value))
  const system = useView((state) => state.units)
  const use = () => {
    const seconds = found.recordings.map(({ overlays }) => overlays[0]?.time.at(-1) ?? 0)
    const note = inPlainSpaces(fitNote(from, found.values, seconds, wordingOf(system)))
    const taken = editMany('log', [...edits, { path: 'notes', value: notesWith(bench.notes, note) }])
    useResults
      .getState()
      .say(
        taken
          ? 'The fitted values are on the bench; undo brings back those before.'
          : 'The bench refuses the fitted values, since they do not go with others that were changed meanwhile.',
      )
  }
  return (
    <div className="log-buttons">
      <Button disabled={used} onClick={use}>
        {used ? 'The fitted values are on the bench' : 'Use on the bench'}
      </Button>
      <Go view="loops" words="Loops and gains" />
      <Go view="spread" words="Spread" />
      <Go view="bench" words="Bench and rescue" />
    </div>
  )
}

const Go = ({ view, words }: { view: string; words: string }) => (
  <Button quiet onClick={() => useView.setState({ view })}>
    {words} →
  </Button>
)
