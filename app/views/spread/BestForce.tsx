/** With which wanted force most parts hold, and how far it may drift: a curve a strategy, over the same parts. */
import { memo } from 'react'
import {
  type BestProgress,
  JOBS,
  type JobId,
  percent,
  rangeText,
  runBest,
  type SpreadStudy,
  type StrategyId,
  shownUnit,
  studyWords,
} from '../../../sim/index.ts'
import { editMany } from '../../parameters/refusal.ts'
import { askedOf } from '../../store/asked.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { crew } from '../../worker/crew.ts'
import { Ask, labelOf } from './Ask.tsx'
import { BestCurves } from './BestCurves.tsx'

/** Parts gripped at each force: enough to tell settings apart part by part, few enough to wait for. */
const PARTS = 200

export type Bests = Partial<Record<StrategyId, BestProgress>>

const useBest = askedOf<SpreadStudy, Bests, StrategyId | 'all'>(async (study, subject, tell) => {
  const { scenario, seed, sampling } = study
  let found: Bests = {}
  for (const strategy of subject === 'all' ? study.strategies : [subject])
    await runBest({ scenario, strategy, seed, sampling, grips: PARTS }, crew, (progress) => {
      found = { ...found, [strategy]: progress }
      return tell(found)
    })
})

const entriesOf = (bests: Bests) => Object.entries(bests) as [StrategyId, BestProgress][]

export const BestForce = memo(function BestForce({ study }: { study: SpreadStudy }) {
  const { asks, effort } = studyWords(study.scenario.job)
  return (
    <Ask
      store={useBest}
      question={study}
      about={study.scenario}
      subjects={['all', ...study.strategies]}
      name="Best wanted force"
      className="best-force"
      heading={`With which ${effort} ${asks}?`}
      begin="Look for it"
      again="Look anew"
      progress={progressOf}
      failed="It could not be found"
    >
      {(bests, _, busy) => (
        <>
          <BestCurves job={study.scenario.job} bests={bests} />
          {entriesOf(bests).map(([strategy, progress]) => (
            <Told key={strategy} job={study.scenario.job} strategy={strategy} progress={progress} busy={busy} />
          ))}
        </>
      )}
    </Ask>
  )
})

/** "Current clamp: 12 forces tried, 3 more of this round." */
function progressOf(bests: Bests): string {
  const [strategy, { tried, left }] = entriesOf(bests).at(-1)!
  return `${labelOf(strategy)}: ${tried} forces tried, ${left} more of this round.`
}

interface ToldProps {
  job: JobId
  strategy: StrategyId
  progress: BestProgress
  busy: boolean
}

function Told({ job, strategy, progress: { best, edits }, busy }: ToldProps) {
  const units = useView((state) => state.units)
  const unit = shownUnit({ unit: JOBS[job].output.effort }, units)
  const force = (newtons: number) => withUnit(formatPlain(unit.toShown(newtons), 3), unit.symbol)
  const label = labelOf(strategy)
  const { one, does, done } = studyWords(job)
  if (best.share === 0)
    return (
      <p>
        {label}: with none of the forces tried a part {one} as required.
      </p>
    )
  const drift = best.drift.low < best.drift.high && `${force(best.drift.low)} to ${force(best.drift.high)}`
  return (
    <p className="best-told">
      <b style={{ color: `var(--strategy-${strategy}-text)` }}>{label}</b> {does} most with {force(best.setting)} of the
      forces tried: {percent(best.share)} ({rangeText(best)}) of the same {PARTS} parts as required.{' '}
      {drift && `From ${drift} no force tried ${done} significantly fewer.`}
      {(best.open.low || best.open.high) && ' That range ends where the trial does.'}{' '}
      {!busy && (
        <Button onClick={() => editMany('wanted grip force', edits)}>
          Want {force(best.setting)} of {label.toLowerCase()}
        </Button>
      )}
    </p>
  )
}
