/** A new job, blank: what is to be done, then the questions of that job in their order; its window is shown as soon as there is one. */
import { type ReactNode, useMemo } from 'react'
import {
  type ActuatorKind,
  type AskChoice,
  type AskFigure,
  type AskStep,
  allTold,
  askedIn,
  faultIn,
  faultLine,
  isTold,
  JOB_SCHEMAS,
  type JobId,
  jobAsked,
  missingIn,
  NEW_JOBS,
  type QuantitySchema,
  type Scenario,
  shownAs,
  strategyOf,
  unsound,
  workAsked,
} from '../../../sim/index.ts'
import { settingLabel } from '../../read/scenario/setting.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { AskField } from './AskField.tsx'
import { Axes } from './Axes.tsx'
import { chooseJob, forgetDraft, tell, tellChoice, tellFigure, useAnswers, useDrafts } from './draft.ts'
import { TheWindowLine } from './TheWindowLine.tsx'
import './new-job.css'

const JOB_IDS = Object.keys(NEW_JOBS) as JobId[]

const kindOf = (job: JobId) => Object.keys(JOB_SCHEMAS[job])[0] as ActuatorKind

function schemaAt(job: JobId, path: string): QuantitySchema {
  const field = fieldAt(kindOf(job), path, job)
  if (field?.kind !== 'quantity') throw new Error(`${path} is no quantity`)
  return field.schema
}

const labelOf = (job: JobId, { path, label }: AskFigure) =>
  (label ?? settingLabel(kindOf(job), path, job).replace(/^[^,]*, /, '')).toLowerCase()

export function NewJob() {
  const job = useDrafts((drafts) => drafts.job)
  return (
    <div className="new-job">
      <header>
        <h1>A new job</h1>
        <p>
          It starts blank. Nothing is taken over from what is on the bench, and that stays there until you put the new
          job in its place. Figures may carry their unit: 11 cm, 4.5 in, 0.2 kN.
        </p>
        <fieldset className="ask-choice">
          <legend>What is to be done?</legend>
          {JOB_IDS.map((id) => (
            <label key={id}>
              <input type="radio" name="new-job" checked={job === id} onChange={() => chooseJob(id)} />
              {NEW_JOBS[id].label}
            </label>
          ))}
        </fieldset>
      </header>
      {job && <Questions key={job} job={job} />}
    </div>
  )
}

function Questions({ job }: { job: JobId }) {
  const answers = useAnswers(job)
  const { steps } = NEW_JOBS[job]
  const told = steps.map((step) => isTold(step, answers))
  const open = told.indexOf(false)
  const before = open < 0 ? null : steps[open]!
  return (
    <>
      <TheWindowLine job={job} atRest={steps.some(({ some }, n) => some && !told[n])} />
      <ol>
        {steps.map((step, n) => (
          <Step key={step.title} title={step.title} told={told[n]!}>
            {n === 0 && <Name job={job} />}
            {open < 0 || n <= open ? <Asked job={job} step={step} /> : <Later job={job} step={before!} />}
          </Step>
        ))}
        <Step title="Axis" told={answers.axis !== null}>
          {before ? <Later job={job} step={before} /> : <Axes job={job} />}
        </Step>
      </ol>
      <Finish job={job} />
    </>
  )
}

/** What has to be told before. */
function Later({ job, step }: { job: JobId; step: AskStep }) {
  const answers = useAnswers(job)
  const missing = missingIn(step, answers).map((figure) => labelOf(job, figure))
  return (
    <p>
      Comes after {step.title.toLowerCase()}
      {missing.length > 0 && `: ${missing.join(', ')}`}.
    </p>
  )
}

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

function Asked({ job, step }: { job: JobId; step: AskStep }) {
  const answers = useAnswers(job)
  const { choices = [], note } = step
  return (
    <>
      {choices.map((choice) => (
        <Choice key={choice.id} job={job} choice={choice} />
      ))}
      {askedIn(step, answers).map(({ id, path, needed = false, label, note: own }) => (
        <AskField
          key={id}
          schema={schemaAt(job, path)}
          {...(label !== undefined && { label })}
          {...(own !== undefined && { note: own })}
          value={answers.figures[id] ?? null}
          needed={needed}
          onTake={(value) => tellFigure(job, id, value)}
        />
      ))}
      {note && answers.choices[note.when.choice] === note.when.is && <p>{note.text}</p>}
    </>
  )
}

function Choice({ job, choice: { id, legend, options } }: { job: JobId; choice: AskChoice }) {
  const answers = useAnswers(job)
  return (
    <fieldset className="ask-choice">
      <legend>{legend}</legend>
      {options.map(({ value, label }) => (
        <label key={value}>
          <input
            type="radio"
            name={`new-job-${id}`}
            checked={answers.choices[id] === value}
            onChange={() => tellChoice(job, id, value)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  )
}

function Name({ job }: { job: JobId }) {
  const { name } = useAnswers(job)
  return (
    <div className="ask-field">
      <label htmlFor="new-job-name">Name of the job</label>
      <input
        id="new-job-name"
        className="field-input ask-text"
        maxLength={200}
        autoComplete="off"
        value={name}
        onChange={({ target }) => tell(job, { name: target.value })}
      />
    </div>
  )
}

/** What was assumed, whether its loops are sound, and the way to the bench. */
function Finish({ job }: { job: JobId }) {
  const answers = useAnswers(job)
  const units = useView((state) => state.units)
  const onBench = useScenario((state) => state.scenario.job)
  const told = allTold(job, answers)
  const made = useMemo(() => (told ? jobAsked(job, answers) : null), [told, job, answers])
  const put = (scenario: Scenario) => {
    useScenario.getState().load(scenario)
    useResults.getState().unpinAll()
    useResults.getState().say('The new job is on the bench; pinned runs of the job before are gone.')
    useView.getState().set({ view: 'bench', time: 0, playing: false, against: 'ghost' })
    forgetDraft(job)
  }
  const faults = made && !made.ok ? made.faults : []
  const { steps } = NEW_JOBS[job]
  return (
    <footer>
      {made?.ok && <Assumed job={job} scenario={made.scenario} />}
      {made?.ok && <Loops scenario={made.scenario} />}
      {faults.length > 0 && (
        <p role="alert">
          This does not go together: {faults.map((fault) => faultLine(inUnits(job, fault, units))).join('; ')}.
        </p>
      )}
      {job !== onBench && (
        <p>
          <strong>Caution</strong> {shownAs({ job }).danger} This bench is no safety function.
        </p>
      )}
      <div className="new-job-ends">
        <Button aria-disabled={!made?.ok} onClick={() => made?.ok && put(made.scenario)}>
          Put it on the bench
        </Button>
        <Button quiet onClick={() => forgetDraft(job)}>
          Start over
        </Button>
        {!made?.ok && <span>{[...steps.map(({ title }) => title), 'axis'].join(', ')} come first.</span>}
      </div>
    </footer>
  )
}

const inUnits = (job: JobId, fault: Parameters<typeof faultIn>[0], units: Parameters<typeof faultIn>[2]) => {
  const blank = workAsked(job, { name: '', figures: {}, choices: {}, axis: null, effort: null })
  return blank.ok ? faultIn(fault, blank.scenario, units) : fault
}

function Assumed({ job, scenario }: { job: JobId; scenario: Scenario }) {
  const answers = useAnswers(job)
  const units = useView((state) => state.units)
  const paths = [...NEW_JOBS[job].assumed(answers), 'drive.busVoltage', 'run.duration']
  const told = paths.flatMap((path) => {
    const text = textAt(scenario, path, units)
    const label = settingLabel(scenario.actuator.kind, path, job).replace(/^[^,]*, /, '')
    return text === '' ? [] : [`${label.charAt(0).toLowerCase()}${label.slice(1)} ${text}`]
  })
  return (
    <p>
      Taken for granted until you change it on the bench: {told.join('; ')}; all else as the format has it. Much of it
      is common practice without a source: measure what your work depends on.
    </p>
  )
}

/** What the loops make of the gains that were matched. */
function Loops({ scenario }: { scenario: Scenario }) {
  const without = useMemo(() => unsound(scenario), [scenario])
  const names = without.map((id) => strategyOf(id).label.toLowerCase())
  return (
    <p>
      {names.length === 0
        ? 'The gains are matched to this axis, and its loops have margin wherever Loops looks at them.'
        : `With this axis the matched gains leave ${names.join(' and ')} without margin at some working point: Loops shows where, and another axis or a softer tune may do better.`}
    </p>
  )
}
