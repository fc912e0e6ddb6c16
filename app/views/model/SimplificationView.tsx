import {
  type BoundFigure,
  type CounterRun,
  type CounterRuns,
  faultIn,
  faultLine,
  HOTTEST,
  type Outcome,
  type Scenario,
  type Simplification,
  type StrategyId,
  textIn,
  toldOf,
  wordingOf,
} from '../../../sim/index.ts'
import { shownUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { BlockView } from './BlockView.tsx'
import { changeOf, percent, turned } from './changes.ts'
import { FORMULAS } from './formulas.ts'

type Figure = ReturnType<typeof toldOf>[number]

interface Props {
  entry: Simplification
  scenario: Scenario
  strategy: StrategyId
  told: CounterRuns | null
}

/** What is left out, and how far off that can be. */
export function SimplificationView({ entry, scenario, strategy, told }: Props) {
  const { id, bound } = entry
  const words = wordingOf(useView((state) => state.units))
  const title = textIn(entry.title, words)
  return (
    <section className="model-simple" aria-label={title}>
      <h4>{title}</h4>
      <p>{textIn(entry.text, words)}</p>
      {bound.how === 'unknown' && (
        <p>
          <strong>Not known.</strong> {bound.measure}
        </p>
      )}
      {bound.how === 'formula' && (
        <>
          <BlockView block={FORMULAS[id]!} />
          <Figures figures={bound.figures(scenario, strategy)} without={bound.without} />
          <p className="model-small">{textIn(bound.basis, words)}</p>
        </>
      )}
      {bound.how === 'runs' && (
        <>
          <p>
            <strong>Counter-runs:</strong> {bound.basis}
          </p>
          {bound.variants(scenario, strategy).length === 0 ? (
            <p className="model-small">Does not apply. {bound.without}</p>
          ) : (
            told && (
              <Runs
                title={title}
                runs={told.runs.filter((run) => run.id === id)}
                scenario={scenario}
                base={told.base}
                heat={entry.element === 'heat'}
              />
            )
          )}
        </>
      )}
    </section>
  )
}

function Figures({ figures, without }: { figures: BoundFigure[]; without: string | undefined }) {
  const system = useView((state) => state.units)
  if (figures.length === 0) return <p className="model-small">Does not apply. {without}</p>
  return (
    <dl className="model-figures">
      {figures.map(({ label, value, unit, shown }) => {
        const { symbol, toShown } = shownUnit(shown ? { unit, shown } : { unit }, system)
        return (
          <div key={label}>
            <dt>{label}</dt>
            <dd className="figure">{withUnit(formatFigure(value === null ? null : toShown(value)), symbol)}</dd>
          </div>
        )
      })}
    </dl>
  )
}

interface RunsProps {
  title: string
  runs: CounterRun[]
  base: Outcome
  scenario: Scenario
  /** The temperature is what the entry is about. */
  heat: boolean
}

function Runs({ title, runs, base, scenario, heat }: RunsProps) {
  const system = useView((state) => state.units)
  if (runs.length === 0) return null
  const all = toldOf(scenario)
  const told = heat ? [...all.slice(0, 2), ...all.slice(-1)] : all.slice(0, -1)
  return (
    <div className="model-runs">
      <table className="model-table" aria-label={`Counter-runs: ${title}`}>
        <thead>
          <RunsHead told={told} />
        </thead>
        <tbody>
          {runs.map(({ label, outcome, faults }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {outcome ? (
                <OutcomeCells {...{ told, outcome, base }} />
              ) : (
                <td colSpan={told.length + 1}>
                  Not possible here: {faults.map((fault) => faultLine(faultIn(fault, scenario, system))).join('; ')}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function RunsHead({ told }: { told: Figure[] }) {
  const system = useView((state) => state.units)
  return (
    <tr>
      <th scope="col">Change</th>
      {told.map((figure) => (
        <th key={figure.id} scope="col" className="figure">
          {figure.label} <span className="unit">{shownUnit(figure, system).symbol}</span>
        </th>
      ))}
      <th scope="col">Verdict</th>
    </tr>
  )
}

interface OutcomeProps {
  told: Figure[]
  outcome: Outcome
  base: Outcome
}

/** Efforts with their change, other figures as they are. */
function OutcomeCells({ told, outcome, base }: OutcomeProps) {
  const system = useView((state) => state.units)
  return (
    <>
      {told.map((figure) => {
        const value = outcome.metrics[figure.id] ?? null
        const change = changeOf(value, base.metrics[figure.id] ?? null)
        return (
          <td key={figure.id} className="figure">
            {formatFigure(value === null ? null : shownUnit(figure, system).toShown(value))}
            {figure.unit !== '' && figure.id !== HOTTEST && <small> {percent(change)}</small>}
          </td>
        )
      })}
      <td>{turned(outcome, base) ? <strong>{outcome.verdict}</strong> : outcome.verdict}</td>
    </>
  )
}
