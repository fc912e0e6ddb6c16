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
import { quantityUnit, shownUnit } from '../../read/units.ts'
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
  const units = useView((state) => state.units)
  const force = quantityUnit('force', units)
  const temperature = quantityUnit('temperature', units)
  const newtons = (value: number | null) => formatFigure(value === null ? null : force.toShown(value))
  if (runs.length === 0) return null
  return (
    <div className="model-runs">
      <table className="model-table" aria-label={`Counter-runs: ${title}`}>
        <thead>
          <tr>
            <th scope="col">Change</th>
            <th scope="col" className="figure">
              Peak <span className="unit">{force.symbol}</span>
            </th>
            <th scope="col" className="figure">
              Settled <span className="unit">{force.symbol}</span>
            </th>
            {heat ? (
              <th scope="col" className="figure">
                Winding <span className="unit">{temperature.symbol}</span>
              </th>
            ) : (
              <th scope="col" className="figure">
                To spare before sliding
              </th>
            )}
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {runs.map(({ label, outcome, faults }) =>
            outcome ? (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td className="figure">
                  {newtons(outcome.peakForce)} <small>{percent(changeOf(outcome.peakForce, base.peakForce))}</small>
                </td>
                <td className="figure">
                  {newtons(outcome.settledForce)}{' '}
                  <small>{percent(changeOf(outcome.settledForce, base.settledForce))}</small>
                </td>
                <td className="figure">
                  {heat
                    ? formatFigure(
                        outcome.windingTemperature === null ? null : temperature.toShown(outcome.windingTemperature),
                      )
                    : percent(outcome.holdMargin)}
                </td>
                <td>{turned(outcome, base) ? <strong>{outcome.verdict}</strong> : outcome.verdict}</td>
              </tr>
            ) : (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td colSpan={4}>
                  Not possible here: {faults.map((fault) => faultLine(faultIn(fault, scenario, units))).join('; ')}
                </td>
              </tr>
            ),
          )}
        </tbody>
      </table>
    </div>
  )
}
