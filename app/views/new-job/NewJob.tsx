/** A new job, blank: part, arm and axis are asked for in this order, and the force window is shown as soon as there is one. */
import type { ReactNode } from 'react'
import { faultLine, type QuantitySchema, type Scenario } from '../../../sim/index.ts'
import { settingLabel } from '../../read/scenario/setting.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { AskField } from './AskField.tsx'
import { Axes } from './Axes.tsx'
import {
  armIsTold,
  assumedPaths,
  DIRECTIONS,
  type Direction,
  fittedJob,
  forgetDraft,
  type Key,
  LIMIT_KEYS,
  MOVE_TIME,
  missingOf,
  PART_KEYS,
  useDraft,
} from './draft.ts'
import { TheWindowLine } from './TheWindowLine.tsx'
import './new-job.css'

const schemaAt = (path: string): QuantitySchema => {
  const field = fieldAt('screw', path)
  if (field?.kind !== 'quantity') throw new Error(`${path} is no quantity`)
  return field.schema
}

export function NewJob() {
  const draft = useDraft()
  const missing = missingOf(draft)
  return (
    <div className="new-job">
      <header>
        <h1>A new job</h1>
        <p>
          It starts blank. Nothing is taken over from what is on the bench, and that stays there until you put the new
          job in its place. Figures may carry their unit: 11 cm, 4.5 in, 0.2 kN.
        </p>
      </header>
      <TheWindowLine />
      <ol>
        <Step title="Part" told={missing.length === 0}>
          <Name />
          {PART_KEYS.map((key) => (
            <Figure key={key} path={key} needed={key !== 'part.stiffness'} />
          ))}
          {LIMIT_KEYS.map((key) => (
            <Figure key={key} path={key} />
          ))}
        </Step>
        <Step title="Arm" told={armIsTold(draft)}>
          {missing.length === 0 ? <Arm /> : <p>Comes after the part: {missing.map(labelOf).join(', ')}.</p>}
        </Step>
        <Step title="Axis" told={draft.axis !== null}>
          {missing.length === 0 && armIsTold(draft) ? <Axes /> : <p>Comes after the arm.</p>}
        </Step>
      </ol>
      <Finish />
    </div>
  )
}

const labelOf = (path: string) => settingLabel('screw', path).split(', ').at(-1)!.toLowerCase()

function Step({ title, told, children }: { title: string; told: boolean; children: ReactNode }) {
  return (
    <li data-told={told}>
      <section aria-label={title}>
        <h2>
          {title} {told && <small>given</small>}
        </h2>
        {children}
      </section>
    </li>
  )
}

function Name() {
  const name = useDraft((draft) => draft.name)
  return (
    <div className="ask-field">
      <label htmlFor="new-job-name">Name of the job</label>
      <input
        id="new-job-name"
        className="field-input ask-text"
        maxLength={200}
        autoComplete="off"
        value={name}
        onChange={({ target }) => useDraft.setState({ name: target.value })}
      />
    </div>
  )
}

function Figure({ path, needed = false }: { path: Key; needed?: boolean }) {
  const value = useDraft((draft) => draft.figures[path] ?? null)
  const set = (next: number | null) => useDraft.setState(({ figures }) => ({ figures: { ...figures, [path]: next } }))
  return <AskField schema={schemaAt(path)} value={value} needed={needed} onTake={set} />
}

const ARM = [
  { value: 'still', label: 'It stands still while it holds the part' },
  { value: 'moves', label: 'It moves the part' },
] as const

const WAYS: Record<Direction, string> = {
  up: 'Acceleration upwards',
  across: 'Acceleration sideways',
  along: 'Acceleration along the grip',
}

function Arm() {
  const arm = useDraft((draft) => draft.arm)
  return (
    <>
      <fieldset className="ask-choice">
        <legend>What does the arm do?</legend>
        {ARM.map(({ value, label }) => (
          <label key={value}>
            <input
              type="radio"
              name="new-job-arm"
              checked={arm === value}
              onChange={() => useDraft.setState({ arm: value })}
            />
            {label}
          </label>
        ))}
      </fieldset>
      {arm === 'moves' && (
        <>
          {DIRECTIONS.map((direction) => (
            <Way key={direction} direction={direction} />
          ))}
          <p>
            The largest in each direction counts. Each becomes a move of {MOVE_TIME} s, one after the other; times and
            further moves can be set on the bench.
          </p>
        </>
      )}
    </>
  )
}

function Way({ direction }: { direction: Direction }) {
  const value = useDraft((draft) => draft.accelerations[direction] ?? null)
  return (
    <AskField
      schema={schemaAt('arm.moves[0].acceleration')}
      label={WAYS[direction]}
      note="Size of the largest acceleration in this direction."
      value={value}
      onTake={(next) =>
        useDraft.setState(({ accelerations }) => ({ accelerations: { ...accelerations, [direction]: next } }))
      }
    />
  )
}

/** What was assumed, and the way to the bench. */
function Finish() {
  const draft = useDraft()
  const job = fittedJob(draft)
  const put = (scenario: Scenario) => {
    useScenario.getState().load(scenario)
    useResults.getState().unpinAll()
    useResults.getState().say('The new job is on the bench; pinned runs of the job before are gone.')
    useView.getState().set({ view: 'bench', time: 0, playing: false, against: 'ghost' })
    forgetDraft()
  }
  const ready = missingOf(draft).length === 0 && armIsTold(draft)
  return (
    <footer>
      {ready && job?.ok && <Assumed scenario={job.scenario} />}
      {ready && job && !job.ok && (
        <p role="alert">This does not go together: {job.faults.map(faultLine).join('; ')}.</p>
      )}
      <div className="new-job-ends">
        <Button aria-disabled={!(ready && job?.ok)} onClick={() => ready && job?.ok && put(job.scenario)}>
          Put it on the bench
        </Button>
        <Button quiet onClick={forgetDraft}>
          Start over
        </Button>
        {!(ready && job?.ok) && <span>Part, arm and axis come first.</span>}
      </div>
    </footer>
  )
}

function Assumed({ scenario }: { scenario: Scenario }) {
  const draft = useDraft()
  const units = useView((state) => state.units)
  return (
    <p>
      Taken for granted until you change it on the bench:{' '}
      {assumedPaths(draft)
        .map(
          (path) =>
            `${settingLabel(scenario.actuator.kind, path)
              .replace(/^[^,]*, /, '')
              .toLowerCase()} ${textAt(scenario, path, units)}`,
        )
        .join('; ')}
      ; the drive and its sensors as the format has them.
    </p>
  )
}
