import { type CounterRuns, SIMPLIFICATIONS } from '../../../sim/index.ts'
import { quantityUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { changeOf, percent, turned } from './changes.ts'

const MOST = 6

/** The counter-runs that change the peak force most, and whether any turns the verdict. */
export function LargestChanges({ told: { base, runs } }: { told: CounterRuns }) {
  const force = quantityUnit(
    'force',
    useView((state) => state.units),
  )
  const done = runs.flatMap(({ id, label, outcome }) =>
    outcome ? [{ id, label, outcome, change: changeOf(outcome.peakForce, base.peakForce) }] : [],
  )
  const largest = done
    .filter(({ change, outcome }) => change !== null || turned(outcome, base))
    .sort((a, b) => Math.abs(b.change ?? Infinity) - Math.abs(a.change ?? Infinity))
    .slice(0, MOST)
  const others = done.filter(({ outcome }) => turned(outcome, base))
  const show = (value: number | null) =>
    withUnit(formatFigure(value === null ? null : force.toShown(value)), force.symbol)
  return (
    <>
      <p>
        Held against: {base.verdict}, peak force {show(base.peakForce)}, settled force {show(base.settledForce)}.{' '}
        {others.length === 0
          ? 'No counter-run so far turns the verdict.'
          : `The verdict turns in ${others.length} of ${done.length}: ${others
              .map(({ id, label, outcome }) => `${titleOf(id).toLowerCase()}, ${label} (${outcome.verdict})`)
              .join('; ')}.`}
      </p>
      {largest.length > 0 && (
        <table className="model-table" aria-label="Largest changes of the peak force">
          <thead>
            <tr>
              <th scope="col">Largest changes</th>
              <th scope="col">Counter-run</th>
              <th scope="col" className="figure">
                Peak force
              </th>
              <th scope="col">Verdict</th>
            </tr>
          </thead>
          <tbody>
            {largest.map(({ id, label, outcome, change }) => (
              <tr key={`${id} ${label}`}>
                <th scope="row">{titleOf(id)}</th>
                <td>{label}</td>
                <td className="figure">{percent(change)}</td>
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
