/** What makes parts fail: of each quantity the share of the failures' variance that it makes alone, and with all that it takes part in. */
import { memo, useMemo, useState } from 'react'
import {
  type Drivers as Driven,
  type DriverRows,
  driversAnswer,
  driversSentence,
  driverText,
  percent,
  runDrivers,
  type SpreadStudy,
  type Subject,
  studyWords,
  subjectName,
  subjectsOf,
} from '../../../sim/index.ts'
import { nameOf } from '../../read/spread/name.ts'
import { askedOf } from '../../store/asked.ts'
import { Pick } from '../../ui/Choice.tsx'
import { crew } from '../../worker/crew.ts'
import { Ask } from './Ask.tsx'

/** Each takes a grip for each quantity, and two more. */
const SAMPLES = 100

interface Progress {
  done: number
  /** Null: none yet. */
  rows: DriverRows | null
}

const useDrivers = askedOf<SpreadStudy, Progress>(async (study, strategy, tell) => {
  const indices = Array.from({ length: SAMPLES }, (_, index) => index)
  const rows = await runDrivers(study, strategy, crew, indices, (done) => tell({ done, rows: null }))
  tell({ done: 1, rows })
})

export const Drivers = memo(function Drivers({ study }: { study: SpreadStudy }) {
  return (
    <Ask
      store={useDrivers}
      question={study}
      about={study.scenario}
      subjects={study.strategies}
      name="What drives the failures"
      className="drivers"
      heading="What makes them fail?"
      begin="Work it out"
      again="Work it out anew"
      progress={({ done }) => `${percent(done)} done`}
      failed="It could not be worked out"
    >
      {({ rows }) => rows && <Answer study={study} rows={rows} />}
    </Ask>
  )
})

/** The same grips answer for each verdict and requirement. */
function Answer({ study, rows }: { study: SpreadStudy; rows: DriverRows }) {
  const { job } = study.scenario
  const [chosen, choose] = useState<Subject>('failing')
  const subjects = useMemo(() => ['failing', ...subjectsOf(job, rows)], [job, rows])
  const of = subjects.includes(chosen) ? chosen : 'failing'
  const answer = useMemo(() => driversAnswer(study, rows, of), [study, rows, of])
  return (
    <>
      {subjects.length > 1 && (
        <div className="spread-commands">
          <Pick<Subject>
            label="What drives"
            options={subjects.map((value) => ({ value, label: subjectName(job, value) }))}
            value={of}
            onChoose={choose}
          />
        </div>
      )}
      {answer ? (
        <Bars study={study} answer={answer} />
      ) : (
        <p>Nothing in these {studyWords(job).runs} varies, so nothing drives it.</p>
      )}
    </>
  )
}

function Bars({ study, answer }: { study: SpreadStudy; answer: Driven }) {
  const { scenario } = study
  const sorted = [...answer.drivers].sort((a, b) => b.total.value - a.total.value)
  const bar = (value: number) => 100 * Math.min(1, Math.max(0, value))
  return (
    <>
      <p className="drivers-told">
        {answer.of === 'spare' && 'Too few or too many fail to rank what makes them. '}
        {driversSentence(scenario.job, answer, (path) => nameOf(scenario, path))}
      </p>
      {sorted.length > 0 && (
        <p className="spread-note">Strong: what the quantity does alone; pale: with all that it takes part in.</p>
      )}
      <ol>
        {sorted.map((driver) => (
          <li key={driver.path}>
            <span>{nameOf(scenario, driver.path)}</span>
            <svg className="spread-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
              <rect className="bar-light" width={bar(driver.total.value)} height={6} />
              <rect className="bar-dark" width={bar(driver.first.value)} height={6} />
            </svg>
            <span className="unit">{driverText(driver)}</span>
          </li>
        ))}
      </ol>
      {sorted.length > 0 && scenario.spread.together.length > 0 && (
        <p className="spread-note">
          Of quantities that go together, a share belongs to the random number that drew them, not to the quantity
          alone.
        </p>
      )}
    </>
  )
}
