/** Single parts: a plot over any two quantities that vary, and the worst of them; a press puts one on the bench. */
import { type KeyboardEvent, type MouseEvent, memo, useMemo, useState } from 'react'
import {
  drawing,
  exponentOf,
  type Fate,
  fateAt,
  JOBS,
  type JobId,
  quantityAt,
  type SpreadAnswer,
  type SpreadStudy,
  STRATEGIES,
  type StrategyId,
  shownUnit,
  studyWords,
} from '../../../sim/index.ts'
import { verdictWord } from '../../read/result/words.ts'
import { useSpread } from '../../store/spread.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { putOnBench } from './put.ts'
import { toneOfFate } from './Shares.tsx'

/** Parts drawn in the plot; more would only cover each other. */
const SHOWN = 1000

interface PartsProps {
  study: SpreadStudy
  told: number
  answers: SpreadAnswer[]
}

export const Parts = memo(function Parts({ study, told, answers }: PartsProps) {
  const paths = study.scenario.spread.varies.map(({ path }) => path)
  const [strategy, setStrategy] = useState<StrategyId>(answers[0]!.strategy)
  const [x, setX] = useState(paths[0]!)
  const [y, setY] = useState(paths[1] ?? paths[0]!)
  const options = paths.map((path) => ({ value: path, label: quantityAt(study.scenario, path)?.title ?? path }))
  const chosen = answers.find((answer) => answer.strategy === strategy) ?? answers[0]!
  return (
    <section className="parts" aria-label="Single parts">
      <div className="parts-choice">
        <Pick
          label="Strategy"
          options={answers.map((answer) => ({
            value: answer.strategy,
            label: STRATEGIES.find(({ id }) => id === answer.strategy)!.label,
          }))}
          value={chosen.strategy}
          onChoose={(id) => setStrategy(id as StrategyId)}
        />
        <Pick label="Across" options={options} value={paths.includes(x) ? x : paths[0]!} onChoose={setX} />
        <Pick label="Up" options={options} value={paths.includes(y) ? y : paths[0]!} onChoose={setY} />
      </div>
      <Plot study={study} told={told} strategy={chosen.strategy} across={paths.indexOf(x)} up={paths.indexOf(y)} />
      <Worst study={study} answer={chosen} />
    </section>
  )
})

interface Dot {
  index: number
  values: number[]
  fate: Fate
  fit: boolean
}

interface PlotProps {
  study: SpreadStudy
  told: number
  strategy: StrategyId
  across: number
  up: number
}

const [WIDTH, HEIGHT] = [600, 300]

function Plot({ study, told, strategy, across, up }: PlotProps) {
  const tally = useSpread(({ tallies }) => tallies.find((each) => each.strategy === strategy))
  const draw = useMemo(() => drawing(study.scenario, study), [study])
  const values = useMemo(() => new Map<number, number[]>(), [draw])
  // The tally grows in place; `told` says when.
  const dots = useMemo(() => {
    const found: Dot[] = []
    for (let index = 0; tally && index < Math.min(study.grips, SHOWN); index++) {
      const fate = fateAt(tally, index)
      if (!fate) continue
      if (!values.has(index)) values.set(index, draw(index).values)
      found.push({ index, values: values.get(index)!, ...fate })
    }
    return found
  }, [tally, told, study, values])
  const place = { x: scaleOf(dots, Math.max(0, across), WIDTH), y: scaleOf(dots, Math.max(0, up), HEIGHT) }
  const at = ({ values: own }: Dot) => [place.x.at(own), HEIGHT - place.y.at(own)] as const
  const [near, setNear] = useState<Dot | null>(null)
  const { job } = study.scenario
  const { done } = studyWords(job)
  const failing = dots.filter(({ fate }) => fate !== JOBS[job].well).length
  const pointed = (event: MouseEvent<SVGSVGElement>) => nearestTo(dots, at, event)
  return (
    <figure className="parts-plot">
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the list of the worst parts does the same by keyboard */}
      <svg
        viewBox={`-6 -6 ${WIDTH + 12} ${HEIGHT + 12}`}
        role="img"
        aria-label={`The first ${dots.length} parts, ${failing} of them not ${done}`}
        data-near={near !== null}
        onPointerMove={(event) => setNear(pointed(event))}
        onPointerLeave={() => setNear(null)}
        onClick={(event) => {
          const dot = pointed(event)
          if (dot) putPart(study, dot.index)
        }}
      >
        <rect className="parts-frame" width={WIDTH} height={HEIGHT} />
        {TONES.map((tone) => (
          <path
            key={tone}
            className={`dot-${tone}`}
            d={dots.map((dot) => (toneOfDot(job, dot) === tone ? shapeAt(tone, at(dot)) : '')).join('')}
          />
        ))}
        {near && <circle className="parts-near" cx={at(near)[0]} cy={at(near)[1]} r={7} />}
      </svg>
      <Range study={study} at={Math.max(0, across)} ends={place.x.ends} words="across" />
      <Range study={study} at={Math.max(0, up)} ends={place.y.ends} words="up" />
      <figcaption>
        <svg viewBox="-6 -6 12 12" aria-hidden="true">
          <path className="dot-calm" d={`M0 0${SHAPES.calm}`} />
        </svg>{' '}
        {done} as required{' '}
        <svg viewBox="-6 -6 12 12" aria-hidden="true">
          <path className="dot-failure" d={`M0 0${SHAPES.failure}`} />
        </svg>{' '}
        lost, or not as required{' '}
        <svg viewBox="-6 -6 12 12" aria-hidden="true">
          <path className="dot-damage" d={`M0 0${SHAPES.damage}`} />
        </svg>{' '}
        damaged. The first {dots.length} parts;{' '}
        {near ? `part ${near.index}: ${wordOf(job, near)}` : 'a press puts one on the bench'}.
      </figcaption>
    </figure>
  )
}

/** A ring, a cross and a triangle: told apart without colour. Each from its own middle. */
const SHAPES = {
  calm: 'm-2.5 0a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0z',
  failure: 'm-4 -4l8 8m0 -8l-8 8',
  damage: 'm0 -4.5l4.5 8.5h-9z',
}
const TONES = ['calm', 'damage', 'failure'] as const
type DotTone = (typeof TONES)[number]

const toneOfDot = (job: JobId, { fate, fit }: Dot): DotTone =>
  fit ? 'calm' : fate === JOBS[job].well ? 'failure' : toneOfFate(fate)

/** All parts of a tone are one path: a thousand elements would keep the page busy. */
const shapeAt = (tone: DotTone, [x, y]: readonly [number, number]) => `M${x.toFixed(1)} ${y.toFixed(1)}${SHAPES[tone]}`

/** How near to a part one has to point, in units of the drawing. */
const NEAR = 10

function nearestTo(
  dots: Dot[],
  at: (dot: Dot) => readonly [number, number],
  { currentTarget, clientX, clientY }: MouseEvent<SVGSVGElement>,
): Dot | null {
  const matrix = currentTarget.getScreenCTM()
  if (!matrix) return null
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(matrix.inverse())
  const far = (dot: Dot) => Math.hypot(at(dot)[0] - x, at(dot)[1] - y)
  const best = dots.reduce<Dot | null>((near, dot) => (!near || far(dot) < far(near) ? dot : near), null)
  return best && far(best) <= NEAR ? best : null
}

const wordOf = (job: JobId, { fate, fit }: Pick<Dot, 'fate' | 'fit'>) =>
  fate === 'refused'
    ? `not ${studyWords(job).acted}`
    : `${verdictWord(fate).toLowerCase()}${fate === JOBS[job].well && !fit ? ', but not as required' : ''}`

function scaleOf(dots: Dot[], at: number, length: number) {
  const values = dots.map((dot) => dot.values[at]!)
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const span = high - low || 1
  return { ends: [low, high] as const, at: (all: number[]) => ((all[at]! - low) / span) * length }
}

function Range({
  study,
  at,
  ends,
  words,
}: {
  study: SpreadStudy
  at: number
  ends: readonly [number, number]
  words: string
}) {
  const path = study.scenario.spread.varies[at]!.path
  const units = useView((state) => state.units)
  const schema = quantityAt(study.scenario, path)!
  const unit = shownUnit(schema, units, exponentOf(study.scenario))
  const text = (value: number) => formatPlain(unit.toShown(value), 4)
  if (!Number.isFinite(ends[0])) return null
  return (
    <p className={`parts-range parts-${words}`}>
      {schema.title}: {text(ends[0])} to {withUnit(text(ends[1]), unit.symbol)} {words === 'across' ? '→' : '↑'}
    </p>
  )
}

/** Quantities told of a part, and how far out in its law one lies. */
const TOLD = 4
const farOut = (share: number) => Math.abs(share - 0.5)

function Worst({ study, answer }: { study: SpreadStudy; answer: SpreadAnswer }) {
  const units = useView((state) => state.units)
  const tally = useSpread(({ tallies }) => tallies.find(({ strategy }) => strategy === answer.strategy))
  const draw = useMemo(() => drawing(study.scenario, study), [study])
  const rows = answer.worst.slice(0, 8)
  return (
    <div className="worst">
      <h3>The worst parts, and what is farthest out in them</h3>
      <ol onKeyDown={walk}>
        {rows.map(({ index }) => {
          const fate = tally && fateAt(tally, index)
          const part = draw(index)
          const farthest = [...part.shares.keys()].sort((a, b) => farOut(part.shares[b]!) - farOut(part.shares[a]!))
          const values = farthest.slice(0, TOLD).map((at) => {
            const { path } = study.scenario.spread.varies[at]!
            const value = part.values[at]!
            const schema = quantityAt(study.scenario, path)!
            const unit = shownUnit(schema, units, exponentOf(study.scenario))
            return `${schema.title} ${withUnit(formatPlain(unit.toShown(value), 3), unit.symbol)}`
          })
          return (
            <li key={index}>
              <Button quiet onClick={() => putPart(study, index)}>
                Part {index}
              </Button>{' '}
              {fate ? wordOf(study.scenario.job, fate) : ''} <span className="unit">{values.join(' · ')}</span>
            </li>
          )
        })}
      </ol>
    </div>
  )
}

/** Up and down move between the buttons of the list. */
function walk(event: KeyboardEvent<HTMLElement>) {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
  const buttons = [...event.currentTarget.querySelectorAll('button')]
  const at = buttons.indexOf(document.activeElement as HTMLButtonElement)
  if (step === 0 || at < 0) return
  event.preventDefault()
  buttons[at + step]?.focus()
}

/** Exactly that part, with its own noise. */
const putPart = (study: SpreadStudy, index: number) =>
  putOnBench(`Part ${index} of the study`, drawing(study.scenario, study)(index).scenario, study.scenario)
