/** What makes parts fail: of each quantity the share of the failures' variance that it makes alone, and with all that it takes part in. */
import { memo } from 'react'
import {
  type Drivers as Answer,
  driversAnswer,
  driverText,
  percent,
  runDrivers,
  type SpreadStudy,
} from '../../../sim/index.ts'
import { nameOf } from '../../read/spread/name.ts'
import { askedOf } from '../../store/asked.ts'
import { crew } from '../../worker/crew.ts'
import { Ask } from './Ask.tsx'

/** Each takes a grip for each quantity, and two more. */
const SAMPLES = 100

interface Progress {
  done: number
  /** Null: none yet, or nothing varies. */
  answer: Answer | null
}

const useDrivers = askedOf<SpreadStudy, Progress>(async (study, strategy, tell) => {
  const indices = Array.from({ length: SAMPLES }, (_, index) => index)
  const rows = await runDrivers(study, strategy, crew, indices, (done) => tell({ done, answer: null }))
  tell({ done: 1, answer: driversAnswer(study, rows) })
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
      {(progress, _, busy) => (busy ? null : <Bars study={study} progress={progress} />)}
    </Ask>
  )
})

function Bars({ study, progress: { answer, done } }: { study: SpreadStudy; progress: Progress }) {
  if (!answer) return done < 1 ? null : <p>Nothing in these grips varies, so nothing drives it.</p>
  const sorted = [...answer.drivers].sort((a, b) => b.total.value - a.total.value)
  const bar = (value: number) => 100 * Math.min(1, Math.max(0, value))
  return (
    <>
      <p>
        {answer.of === 'failing'
          ? 'Shares of what decides whether a part fails.'
          : 'Too few or too many fail to rank what makes them: shares of how much the parts have to spare.'}{' '}
        Dark: what the quantity does alone; light: with all that it takes part in.
      </p>
      <ol>
        {sorted.map((driver) => (
          <li key={driver.path}>
            <span>{nameOf(study.scenario, driver.path)}</span>
            <svg className="driver-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
              <rect className="driver-total" width={bar(driver.total.value)} height={6} />
              <rect className="driver-first" width={bar(driver.first.value)} height={6} />
            </svg>
            <span className="unit">{driverText(driver)}</span>
          </li>
        ))}
      </ol>
      {study.scenario.spread.together.length > 0 && (
        <p className="spread-note">
          Of quantities that go together, a share belongs to the random number that drew them, not to the quantity
          alone.
        </p>
      )}
    </>
  )
}
