/** With which wanted force most parts hold, and how far it may drift. */
import { useEffect, useState } from 'react'
import {
  type BestProgress,
  percent,
  rangeText,
  type SpreadStudy,
  STRATEGIES,
  type StrategyId,
  shownUnit,
} from '../../../sim/index.ts'
import { editMany } from '../../parameters/refusal.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { startStudy } from '../../worker/study.ts'

/** Parts gripped at each force: enough to tell settings apart part by part, few enough to wait for. */
const PARTS = 200

type Answers = Partial<Record<StrategyId, BestProgress>>

interface Sought {
  strategy: StrategyId
  stop(): void
}

export function BestForce({ study }: { study: SpreadStudy }) {
  const [strategy, setStrategy] = useState<StrategyId>(study.strategies[0]!)
  const [answers, setAnswers] = useState<Answers>({})
  const [sought, setSought] = useState<Sought | null>(null)
  const [message, setMessage] = useState('')
  // Another study has other answers.
  useEffect(() => setAnswers({}), [study.scenario])
  useEffect(() => () => sought?.stop(), [sought])
  const begin = () => {
    setMessage('')
    const { scenario, seed, sampling } = study
    const stop = startStudy(
      'bestForce',
      { scenario, strategy, seed, sampling, grips: PARTS },
      {
        item: (item) => setAnswers((before) => ({ ...before, [strategy]: item })),
        done: () => setSought(null),
        failed: (why) => {
          setMessage(why)
          setSought(null)
        },
      },
    )
    setSought({ strategy, stop })
  }
  const answer = answers[strategy]
  const label = STRATEGIES.find(({ id }) => id === strategy)!.label
  return (
    <section className="best-force" aria-label="Best wanted force">
      <h2>With which force do most parts hold?</h2>
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
        {sought ? (
          <Button onClick={() => setSought(null)}>Stop</Button>
        ) : (
          <Button onClick={begin}>{answer ? 'Look anew' : 'Look for it'}</Button>
        )}
        <span role="status">
          {sought && (answer ? `${answer.tried} forces tried, ${answer.left} more of this round.` : 'Gripping …')}
        </span>
      </div>
      {message && <p role="alert">It could not be found: {message}</p>}
      {answer && <Curve answer={answer} strategy={strategy} label={label} busy={sought !== null} />}
    </section>
  )
}

interface CurveProps {
  answer: BestProgress
  strategy: StrategyId
  label: string
  busy: boolean
}

const [WIDTH, HEIGHT] = [600, 120]

function Curve({ answer: { best, edits }, strategy, label, busy }: CurveProps) {
  const units = useView((state) => state.units)
  const unit = shownUnit({ unit: 'N' }, units)
  const force = (newtons: number) => withUnit(formatPlain(unit.toShown(newtons), 3), unit.symbol)
  const { curve } = best
  const [from, to] = [curve[0]!.setting, curve.at(-1)!.setting]
  const x = (setting: number) => (to > from ? ((setting - from) / (to - from)) * WIDTH : WIDTH / 2)
  const y = (share: number) => HEIGHT * (1 - share)
  const line = (pick: (point: (typeof curve)[number]) => number, points = curve) =>
    points.map((point) => `${x(point.setting).toFixed(1)} ${y(pick(point)).toFixed(1)}`).join('L')
  const band = `M${line(({ low }) => low)}L${line(({ high }) => high, curve.toReversed())}Z`
  const drift = best.drift.low < best.drift.high ? `${force(best.drift.low)} to ${force(best.drift.high)}` : null
  return (
    <>
      <svg
        className="best-curve"
        viewBox={`-4 -4 ${WIDTH + 8} ${HEIGHT + 8}`}
        role="img"
        aria-label={curve.map((point) => `${force(point.setting)}: ${percent(point.share)}`).join(', ')}
      >
        <rect
          className="best-drift"
          x={x(best.drift.low)}
          width={x(best.drift.high) - x(best.drift.low)}
          height={HEIGHT}
        />
        <path className="best-band" d={band} />
        <path
          className="best-line"
          d={`M${line(({ share }) => share)}`}
          style={{ stroke: `var(--strategy-${strategy})` }}
        />
        {curve.map((point) => (
          <circle
            key={point.setting}
            cx={x(point.setting)}
            cy={y(point.share)}
            r={2}
            style={{ fill: `var(--strategy-${strategy})` }}
          />
        ))}
      </svg>
      <div className="best-ends">
        <span>{force(from)}</span>
        <span>wanted force; up: share held as required, 0 to 100 %</span>
        <span>{force(to)}</span>
      </div>
      <p>
        {best.share === 0
          ? `With none of the forces tried ${label.toLowerCase()} holds a part as required.`
          : `Of the forces tried ${label.toLowerCase()} holds most parts as required with ${force(best.setting)}: ${percent(best.share)} (${rangeText(best)}) of the same ${PARTS} parts.`}{' '}
        {best.share > 0 && drift && `From ${drift} no force tried held significantly fewer.`}
        {best.share > 0 && (best.open.low || best.open.high) && ' That range ends where the trial does.'}
      </p>
      {best.share > 0 && !busy && (
        <Button onClick={() => editMany('wanted grip force', edits)}>Want {force(best.setting)}</Button>
      )}
    </>
  )
}
