/** What makes parts fail: of each quantity the share of the failures' variance that it makes alone, and with all that it takes part in. */
import { useEffect, useState } from 'react'
import {
  type DriversProgress,
  driverText,
  percent,
  type SpreadStudy,
  STRATEGIES,
  type StrategyId,
} from '../../../sim/index.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'
import { startStudy } from '../../worker/study.ts'
import { nameOf } from './name.ts'

/** Each takes a grip for each quantity, and two more. */
const SAMPLES = 100

type Answers = Partial<Record<StrategyId, DriversProgress>>

export function Drivers({ study }: { study: SpreadStudy }) {
  const [strategy, setStrategy] = useState<StrategyId>(study.strategies[0]!)
  const [answers, setAnswers] = useState<Answers>({})
  const [stop, setStop] = useState<{ act(): void } | null>(null)
  const [message, setMessage] = useState('')
  // Another study has other answers.
  useEffect(() => setAnswers({}), [study.scenario])
  useEffect(() => () => stop?.act(), [stop])
  const begin = () => {
    setMessage('')
    setAnswers((before) => ({ ...before, [strategy]: undefined }))
    const act = startStudy(
      'drivers',
      { study, strategy, samples: SAMPLES },
      {
        item: (item) => setAnswers((before) => ({ ...before, [strategy]: item })),
        done: () => setStop(null),
        failed: (why) => {
          setMessage(why)
          setStop(null)
        },
      },
    )
    setStop({ act })
  }
  const progress = answers[strategy]
  return (
    <section className="drivers" aria-label="What drives the failures">
      <h2>What makes them fail?</h2>
      <div className="spread-commands">
        <Pick
          label="Strategy"
          options={study.strategies.map((id) => ({
            value: id,
            label: STRATEGIES.find((each) => each.id === id)!.label,
          }))}
          value={strategy}
          onChoose={(id) => setStrategy(id as StrategyId)}
        />
        {stop ? (
          <Button onClick={() => setStop(null)}>Stop</Button>
        ) : (
          <Button onClick={begin}>{progress ? 'Work it out anew' : 'Work it out'}</Button>
        )}
        <span role="status">{stop && (progress ? `${percent(progress.done)} done` : 'Gripping …')}</span>
      </div>
      {message && <p role="alert">It could not be worked out: {message}</p>}
      {progress && <Answer study={study} progress={progress} />}
    </section>
  )
}

function Answer({ study, progress: { answer, done } }: { study: SpreadStudy; progress: DriversProgress }) {
  if (!answer) return done < 1 ? null : <p>Nothing in these grips varies, so nothing drives it.</p>
  const sorted = [...answer.drivers].sort((a, b) => b.total.value - a.total.value)
  const name = (path: string) => nameOf(study.scenario, path)
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
            <span>{name(driver.path)}</span>
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
