/** Efforts of all parts against the window of the work in the file: of a grip its peak and settled force. */
import { memo, useMemo } from 'react'
import {
  JOBS,
  type JobId,
  type SpreadAnswer,
  type SpreadStudy,
  STRATEGIES,
  shownUnit,
  studyWords,
  type Tally,
} from '../../../sim/index.ts'
import { useSpread } from '../../store/spread.ts'
import { useView } from '../../store/view.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { useWidth } from '../../ui/useWidth.ts'
import { marksUpTo } from './marks.ts'
import './histogram.css'

const BINS = 80

const placeOf = (job: JobId, id: string) => JOBS[job].figures.findIndex((metric) => metric.id === id)

interface HistogramProps {
  study: SpreadStudy
  answers: SpreadAnswer[]
  /** The first of them alone. */
  first?: boolean
}

export const Histogram = memo(function Histogram({ study, answers, first = false }: HistogramProps) {
  const { job } = study.scenario
  const { study: told, figures } = JOBS[job]
  const forces = first ? told.histograms.slice(0, 1) : told.histograms
  const { least, most } = useMemo(() => told.window(study.scenario), [study])
  const ends = answers.flatMap(({ figures }) => forces.flatMap((id) => [figures[id]!.quantiles['0.99'] ?? 0]))
  const to = 1.15 * Math.max(1e-9, ...ends, least ?? 0, Math.min(most ?? 0, 2 * Math.max(...ends)))
  return (
    <section className="histograms" aria-label="Forces of all parts">
      {forces.map((id) => (
        <figure key={id}>
          <figcaption>
            {figures[placeOf(job, id)]!.label} of all parts; the band is {studyWords(job).band}
          </figcaption>
          {answers.map((answer) => (
            <Row key={answer.strategy} {...{ job, id, answer, to, least, most }} />
          ))}
          <Ticks job={job} to={to} />
        </figure>
      ))}
    </section>
  )
})

interface RowProps {
  job: JobId
  id: string
  answer: SpreadAnswer
  to: number
  least: number | null
  most: number | null
}

function Row({ job, id, answer, to, least, most }: RowProps) {
  const tally = useSpread(({ tallies }) => tallies.find(({ strategy }) => strategy === answer.strategy))
  const units = useView((state) => state.units)
  const { label } = STRATEGIES.find((each) => each.id === answer.strategy)!
  const unit = shownUnit({ unit: JOBS[job].output.effort }, units)
  const { quantiles } = answer.figures[id]!
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
function outline(tally: Tally, id: string, to: number): string {
  const heights = tally.sketches[placeOf(tally.job, id)]!.histogram(0, to, BINS)
  const most = Math.max(1e-9, ...heights)
  const steps = Array.from(heights, (height, bin) => {
    const y = (20 - 20 * Math.sqrt(height / most)).toFixed(2)
    return `L${bin} ${y}H${bin + 1}`
  })
  return `M0 20${steps.join('')}V20Z`
}

function Ticks({ job, to }: { job: JobId; to: number }) {
  const [box, width] = useWidth<HTMLDivElement>()
  const units = useView((state) => state.units)
  const unit = shownUnit({ unit: JOBS[job].output.effort }, units)
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
