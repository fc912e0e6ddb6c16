/** Peak and settled force of all parts against the force window of the part in the file. */
import { memo, useMemo } from 'react'
import {
  forceWindow,
  METRICS,
  type SpreadAnswer,
  type SpreadStudy,
  STRATEGIES,
  shownUnit,
  type Tally,
} from '../../../sim/index.ts'
import { useSpread } from '../../store/spread.ts'
import { useView } from '../../store/view.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { useWidth } from '../../ui/useWidth.ts'
import { marksUpTo } from './marks.ts'
import './histogram.css'

const FORCES = ['peakForce', 'settledForce'] as const
type Force = (typeof FORCES)[number]

const BINS = 80

const placeOf = (id: Force) => METRICS.findIndex((metric) => metric.id === id)

interface HistogramProps {
  study: SpreadStudy
  answers: SpreadAnswer[]
  forces?: readonly Force[]
}

export const Histogram = memo(function Histogram({ study, answers, forces = FORCES }: HistogramProps) {
  const { least, most } = useMemo(() => forceWindow(study.scenario), [study])
  const ends = answers.flatMap(({ figures }) => forces.flatMap((id) => [figures[id].quantiles['0.99'] ?? 0]))
  const to = 1.15 * Math.max(1e-9, ...ends, least ?? 0, Math.min(most ?? 0, 2 * Math.max(...ends)))
  return (
    <section className="histograms" aria-label="Forces of all parts">
      {forces.map((id) => (
        <figure key={id}>
          <figcaption>
            {METRICS[placeOf(id)]!.label} of all parts; the band is the force window of the part in the file
          </figcaption>
          {answers.map((answer) => (
            <Row key={answer.strategy} {...{ id, answer, to, least, most }} />
          ))}
          <Ticks to={to} />
        </figure>
      ))}
    </section>
  )
})

interface RowProps {
  id: Force
  answer: SpreadAnswer
  to: number
  least: number | null
  most: number | null
}

function Row({ id, answer, to, least, most }: RowProps) {
  const tally = useSpread(({ tallies }) => tallies.find(({ strategy }) => strategy === answer.strategy))
  const units = useView((state) => state.units)
  const { label } = STRATEGIES.find((each) => each.id === answer.strategy)!
  const unit = shownUnit({ unit: 'N' }, units)
  const { quantiles } = answer.figures[id]
  const figure = (value: number | null) =>
    value === null ? 'none' : withUnit(formatPlain(unit.toShown(value), 3), unit.symbol)
  const spoken = `${label}: half of the parts below ${figure(quantiles['0.5'])}, 98 of 100 from ${figure(quantiles['0.01'])} to ${figure(quantiles['0.99'])}.`
  return (
    <div className="histogram-row">
      <span style={{ color: `var(--strategy-${answer.strategy}-text)` }}>{label}</span>
      <svg viewBox={`0 0 ${BINS} 20`} preserveAspectRatio="none" role="img" aria-label={spoken}>
        <rect
          className="histogram-window"
          x={(BINS * (least ?? 0)) / to}
          width={Math.max(0, (BINS * (Math.min(most ?? to, to) - (least ?? 0))) / to)}
          y={0}
          height={20}
        />
        {tally && <path d={outline(tally, id, to)} style={{ fill: `var(--strategy-${answer.strategy})` }} />}
      </svg>
    </div>
  )
}

/** Bars as one outline; heights by their root, so that a single part among thousands can be seen. */
function outline(tally: Tally, id: Force, to: number): string {
  const heights = tally.sketches[placeOf(id)]!.histogram(0, to, BINS)
  const most = Math.max(1e-9, ...heights)
  const steps = Array.from(heights, (height, bin) => {
    const y = (20 - 20 * Math.sqrt(height / most)).toFixed(2)
    return `L${bin} ${y}H${bin + 1}`
  })
  return `M0 20${steps.join('')}V20Z`
}

function Ticks({ to }: { to: number }) {
  const [box, width] = useWidth<HTMLDivElement>()
  const units = useView((state) => state.units)
  const unit = shownUnit({ unit: 'N' }, units)
  const end = unit.toShown(to)
  const marks = marksUpTo(end, width / 90)
  return (
    <div ref={box} className="histogram-ticks" aria-hidden="true">
      {marks.map((mark) => (
        <span key={mark} style={{ left: `${(100 * mark) / end}%` }}>
          {formatPlain(mark, 3)}
        </span>
      ))}
      <span className="histogram-unit">{unit.symbol}</span>
    </div>
  )
}
