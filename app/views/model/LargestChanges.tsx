import { type CounterRuns, jobOf, type Scenario, SIMPLIFICATIONS, toldOf } from '../../../sim/index.ts'
import { shownUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { changeOf, percent, turned } from './changes.ts'

const MOST = 6

interface Props {
  scenario: Scenario
  told: CounterRuns
}

/** The counter-runs that change an effort most, and whether any turns the verdict. */
export function LargestChanges({ scenario, told: { base, runs } }: Props) {
  const system = useView((state) => state.units)
  const efforts = toldOf(scenario).filter(({ unit }) => unit === jobOf(scenario).output.effort)
  const done = runs.flatMap(({ id, label, outcome }) => {
    if (!outcome) return []
    const changes = efforts.map((effort) => changeOf(outcome.metrics[effort.id]!, base.metrics[effort.id]!))
    const sizes = changes.flatMap((change) => (change === null ? [] : [Math.abs(change)]))
    return [{ id, label, outcome, changes, size: sizes.length > 0 ? Math.max(...sizes) : null }]
  })
  const largest = done
    .filter(({ size, outcome }) => size !== null || turned(outcome, base))
    .sort((a, b) => (b.size ?? Infinity) - (a.size ?? Infinity))
    .slice(0, MOST)
  const others = done.filter(({ outcome }) => turned(outcome, base))
  const figures = efforts.map((effort) => {
    const { symbol, toShown } = shownUnit(effort, system)
    const value = base.metrics[effort.id] ?? null
    return `${effort.label.toLowerCase()} ${withUnit(formatFigure(value === null ? null : toShown(value)), symbol)}`
  })
  return (
    <>
      <p>
        Held against: {base.verdict}, {figures.join(', ')}.{' '}
        {others.length === 0
          ? 'No counter-run so far turns the verdict.'
          : `The verdict turns in ${others.length} of ${done.length}: ${others
              .map(({ id, label, outcome }) => `${titleOf(id).toLowerCase()}, ${label} (${outcome.verdict})`)
              .join('; ')}.`}
      </p>
      {largest.length > 0 && (
        <table className="model-table" aria-label="Largest changes">
          <thead>
            <tr>
              <th scope="col">Largest changes</th>
              <th scope="col">Counter-run</th>
              {efforts.map(({ id, label }) => (
                <th key={id} scope="col" className="figure">
                  {label}
                </th>
              ))}
              <th scope="col">Verdict</th>
            </tr>
          </thead>
          <tbody>
            {largest.map(({ id, label, outcome, changes }) => (
              <tr key={`${id} ${label}`}>
                <th scope="row">{titleOf(id)}</th>
                <td>{label}</td>
                {efforts.map((effort, place) => (
                  <td key={effort.id} className="figure">
                    {percent(changes[place]!)}
                  </td>
                ))}
                <td>{outcome.verdict}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  )
}

const titleOf = (id: string) => SIMPLIFICATIONS.find((each) => each.id === id)?.title ?? id
