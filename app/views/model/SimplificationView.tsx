import {
  type BoundFigure,
  type CounterRun,
  type CounterRuns,
  faultIn,
  faultLine,
  type Outcome,
  type Scenario,
  type Simplification,
  type StrategyId,
  textIn,
  wordingOf,
} from '../../../sim/index.ts'
import { quantityUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { BlockView } from './BlockView.tsx'
import { changeOf, percent, turned } from './changes.ts'
import { FORMULAS } from './formulas.ts'

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
  return (
    <div className="model-runs">
      <table className="model-table" aria-label={`Counter-runs: ${title}`}>
        <thead>
          <RunsHead heat={heat} system={system} />
        </thead>
        <tbody>
          {runs.map(({ label, outcome, faults }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {outcome ? (
                <OutcomeCells outcome={outcome} base={base} heat={heat} system={system} />
              ) : (
                <td colSpan={4}>
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

function RunsHead({ heat, system }: { heat: boolean; system: UnitSystem }) {
  const force = <span className="unit">{quantityUnit('force', system).symbol}</span>
  return (
    <tr>
      <th scope="col">Change</th>
      <th scope="col" className="figure">
        Peak {force}
      </th>
      <th scope="col" className="figure">
        Settled {force}
      </th>
      <th scope="col" className="figure">
        {heat ? (
          <>
            Winding <span className="unit">{quantityUnit('temperature', system).symbol}</span>
          </>
        ) : (
          'To spare before sliding'
        )}
      </th>
      <th scope="col">Verdict</th>
    </tr>
  )
}

interface OutcomeProps {
  outcome: Outcome
  base: Outcome
  heat: boolean
  system: UnitSystem
}

function OutcomeCells({ outcome, base, heat, system }: OutcomeProps) {
  const figure = (quantity: 'force' | 'temperature', value: number | null) =>
    formatFigure(value === null ? null : quantityUnit(quantity, system).toShown(value))
  return (
    <>
      <td className="figure">
        {figure('force', outcome.peakForce)} <small>{percent(changeOf(outcome.peakForce, base.peakForce))}</small>
      </td>
      <td className="figure">
        {figure('force', outcome.settledForce)}{' '}
        <small>{percent(changeOf(outcome.settledForce, base.settledForce))}</small>
      </td>
      <td className="figure">
        {heat ? figure('temperature', outcome.windingTemperature) : percent(outcome.holdMargin)}
      </td>
      <td>{turned(outcome, base) ? <strong>{outcome.verdict}</strong> : outcome.verdict}</td>
    </>
  )
}
