/** What every grip must meet, figure by figure, with the figure as it stands beside it. */
import {
  boundText,
  jobOf,
  type Metric,
  type MetricId,
  metricText,
  NO_FIGURE,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  textIn,
  withUnit,
  wordingOf,
} from '../../sim/index.ts'
import { toneOf } from '../read/result/words.ts'
import { fieldAt } from '../read/scenario/walk.ts'
import type { UnitSystem } from '../read/units.ts'
import { useResults } from '../store/results.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import { Pick } from '../ui/Choice.tsx'
import { QuantityField } from './QuantityField.tsx'
import { edit, useFault } from './refusal.ts'

type Asked = Metric & { id: MetricId }

/** Those of the job; figures of other jobs are read and shown alike. */
const figuresOf = (scenario: Pick<Scenario, 'job'>) =>
  (jobOf(scenario).figures as unknown as Metric[]).filter((metric): metric is Asked => metric.id !== 'stepError')

/** Figures of which more is better; of the others a most is asked first. */
const MORE: string[] = [
  ...['holdMargin', 'damageMargin', 'settledForce', 'minForceInMove', 'holdTime', 'seenStiffness'],
  ...['seatForce', 'depth', 'bandMargin', 'forceMargin', 'yieldMargin', 'holdingForce'],
]

const BOUNDS = ['least', 'most'] as const

export function Requirements() {
  const asked = useScenario((state) => state.scenario.requirements)
  const job = useScenario((state) => state.scenario.job)
  const all = figuresOf({ job })
  const figures = all.filter(({ id }) => asked[id] !== undefined)
  return (
    <>
      {figures.map((figure) => (
        <Row key={figure.id} figure={figure} />
      ))}
      <Add left={all.filter(({ id }) => asked[id] === undefined)} />
    </>
  )
}

function Row({ figure }: { figure: Asked }) {
  const kind = useScenario((state) => state.scenario.actuator.kind)
  const job = useScenario((state) => state.scenario.job)
  const units = useView((state) => state.units)
  const path = `requirements.${figure.id}`
  const fault = useFault(path)
  return (
    <fieldset className="set">
      <legend>{figure.label}</legend>
      <Button
        quiet
        className="set-remove"
        aria-label={`Ask for no ${figure.label.toLowerCase()}`}
        onClick={() => edit(path, undefined)}
      >
        remove
      </Button>
      <p className="note-range">{textIn(figure.note, wordingOf(units))}</p>
      {BOUNDS.map((bound) => {
        const field = fieldAt(kind, `${path}.${bound}`, job)
        return field?.kind === 'quantity' && <QuantityField key={bound} field={field} />
      })}
      <Standing figure={figure} units={units} />
      <span className="field-fault" aria-live="polite">
        {fault}
      </span>
    </fieldset>
  )
}

/** The figure of each strategy's run, and whether it meets what is asked. */
function Standing({ figure, units }: { figure: Asked; units: UnitSystem }) {
  const runs = useResults((state) => state.runs)
  const shown = useView((state) => state.shown)
  return (
    <ul className="standing-figures">
      {STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ id, label }) => {
        const result = runs[id]?.result
        const missed = result?.requirements.some((each) => each.figure === figure.id && !each.met)
        const { text, symbol } = metricText(figure, result ? figure.value(result) : null, units)
        return (
          <li key={id} data-missed={missed}>
            <span style={{ color: `var(--strategy-${id}-text)` }}>{label}</span>{' '}
            {text === NO_FIGURE ? text : withUnit(text, symbol)} {result && (missed ? 'misses it' : 'meets it')}
          </li>
        )
      })}
    </ul>
  )
}

function Add({ left }: { left: Asked[] }) {
  if (left.length === 0) return null
  const options = [
    { value: '', label: 'Ask for a figure …' },
    ...left.map((figure) => ({ value: figure.id as string, label: figure.label })),
  ]
  const add = (chosen: string) => {
    const figure = left.find((each) => each.id === chosen)
    if (figure) edit(`requirements.${figure.id}`, firstBound(figure))
  }
  return <Pick label="Add a requirement" bare options={options} value="" onChoose={add} />
}

/** A bound to begin with: what a strategy that holds the part reaches, or any, so that a person sees what it is worth. */
function firstBound({ id }: Asked) {
  const { runs } = useResults.getState()
  const results = useView.getState().shown.flatMap((strategy) => runs[strategy as StrategyId]?.result ?? [])
  const holding = results.filter(({ verdict }) => toneOf(verdict) === 'calm')
  const values = [...holding, ...results].map(({ metrics }) => metrics[id])
  const bound = MORE.includes(id) ? 'least' : 'most'
  return { [bound]: Number((values.find((value) => value !== null) ?? 0).toPrecision(2)) }
}

/** The folded line: what is asked, "Hold margin at least 50 %". */
export function requirementsLine(scenario: Scenario, units: UnitSystem): string {
  const { requirements } = scenario
  const words = wordingOf(units)
  const texts = figuresOf(scenario).flatMap((figure) =>
    BOUNDS.flatMap((bound) => {
      const limit = requirements[figure.id]?.[bound]
      return limit === undefined ? [] : [`${figure.label} ${boundText(figure, bound, limit, words)}`]
    }),
  )
  return texts.join(' · ') || 'none'
}
