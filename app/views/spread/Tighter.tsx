/** Which tolerance to buy: how many more of the same parts hold where one quantity keeps nearer to its middle. */
import { memo } from 'react'
import { create } from 'zustand'
import {
  grouped,
  percent,
  runTightened,
  type SpreadStudy,
  type StrategyId,
  studyWords,
  type Tally,
  type TightCounts,
  type Tightened,
  tightenedOf,
  tightSentence,
  tightText,
  variedPaths,
} from '../../../sim/index.ts'
import { nameOf } from '../../read/spread/name.ts'
import { quantityUnit } from '../../read/units.ts'
import { askedOf } from '../../store/asked.ts'
import { useSpread } from '../../store/spread.ts'
import { NumberField } from '../../ui/NumberField.tsx'
import { crew } from '../../worker/crew.ts'
import { Ask } from './Ask.tsx'

/** Batches of the study that are gripped once more for each quantity: 400 parts. */
const BATCHES = 20

interface Question {
  study: SpreadStudy
  /** 0 for a quantity that stays at its value. */
  factor: number
}

interface Progress {
  factor: number
  done: number
  parts: number
  /** Of the quantities whose parts are all in. */
  tightened: Tightened[]
}

const useTighter = askedOf<Question, Progress>(async ({ study, factor }, strategy, tell) => {
  const tally = useSpread.getState().tallies.find((each) => each.strategy === strategy)
  if (!tally) return
  const batches = [...tally.batches].sort((a, b) => a - b).slice(0, BATCHES)
  const parts = partsOf(tally, batches)
  const asked = { ...study, strategies: [strategy] }
  const told = (done: number, counts: TightCounts[]) => {
    const whole = counts.filter(({ sizes }) => sizes.reduce((sum, size) => sum + size, 0) === parts)
    return tell({ factor, done, parts, tightened: whole.map((each) => tightenedOf(study.sampling, each)) })
  }
  await runTightened(asked, [tally], factor, crew, told, batches)
})

const partsOf = ({ fates }: Tally, batches: number[]) => batches.reduce((sum, batch) => sum + fates[batch]!.length, 0)

/** What is left of the scatter. */
const useFactor = create<{ factor: number }>()(() => ({ factor: 0.5 }))

export const Tighter = memo(function Tighter({ study }: { study: SpreadStudy }) {
  const { factor } = useFactor()
  return (
    <Ask
      store={useTighter}
      question={{ study, factor }}
      about={study.scenario}
      subjects={study.strategies}
      name="What a tighter tolerance buys"
      className="tighter"
      heading="Which tolerance is worth buying?"
      begin="Try each"
      again="Try each anew"
      progress={({ done }) => `${percent(done)} done`}
      failed="It could not be tried"
      settings={
        <NumberField
          label="Scatter left"
          unit={quantityUnit('ratio', 'si')}
          value={factor}
          min={0}
          max={0.99}
          note="How much of its scatter each quantity keeps, one at a time; 0 for none. A tolerance keeps its capability."
          onEdit={(next) => useFactor.setState({ factor: next })}
        />
      }
    >
      {(progress, strategy, busy) => <Gains {...{ study, strategy, progress, busy }} />}
    </Ask>
  )
})

interface GainsProps {
  study: SpreadStudy
  strategy: StrategyId
  progress: Progress
  busy: boolean
}

function Gains({ study: { scenario }, progress: { factor, parts, tightened }, busy }: GainsProps) {
  const name = (path: string) => nameOf(scenario, path)
  const sorted = [...tightened].sort((a, b) => b.gain.share - a.gain.share)
  const [low, high] = [
    Math.min(0, ...sorted.map(({ gain }) => gain.low)),
    Math.max(0, ...sorted.map(({ gain }) => gain.high)),
  ]
  const place = (gain: number) => (100 * (gain - low)) / Math.max(1e-9, high - low)
  const whole = !busy && tightened.length === variedPaths(scenario).length
  return (
    <>
      {whole && <p className="tighter-told">{tightSentence(scenario.job, tightened, factor, name)}</p>}
      {sorted.length > 0 && (
        <p className="spread-note">
          Of the same {grouped(parts)} parts, {percent(factor)} of the scatter left to one quantity at a time. Bars: how
          many more are {studyWords(scenario.job).done}, right of the stroke, or fewer, left of it; thin: 95 % limits.
        </p>
      )}
      <ol>
        {sorted.map(({ path, gain, ...rest }) => (
          <li key={path}>
            <span>{name(path)}</span>
            <svg className="spread-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
              <path className="bar-change" d={`M${place(0)} 3H${place(gain.share)}`} />
              <path className="bar-limits" d={`M${place(gain.low)} 3H${place(gain.high)}M${place(0)} 0V6`} />
            </svg>
            <span className="unit">{tightText(scenario.job, { gain, ...rest })}</span>
          </li>
        ))}
      </ol>
    </>
  )
}
