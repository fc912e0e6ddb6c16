import type { Scenario } from '../../../sim/index.ts'
import { type ComparedRow, comparedAxes } from '../../read/axes/compare.ts'
import { fittedSentences, fittedSettings } from '../../read/axes/fitted.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import type { UnitSystem } from '../../read/units.ts'
import type { Column } from './columns.ts'
import type { Leaving } from './fit.ts'
import type { SecondAxis } from './matter.ts'

interface Props {
  scenario: Scenario
  beside: SecondAxis
  columns: Column[]
  units: UnitSystem
  left: readonly Leaving[]
}

/** The axis of the bench and the one beside it, figure by figure, and what was fitted to the latter. */
export function TwoAxes({ scenario, beside, columns, units, left }: Props) {
  const rows = comparedAxes(
    { scenario, results: columns.map(({ run }) => run?.result ?? null) },
    { scenario: beside.scenario, results: columns.map((column) => column.beside?.result ?? null) },
    units,
  )
  const half = Math.ceil(rows.length / 2)
  return (
    <section className="report-axes" aria-labelledby="report-axes">
      <h2 id="report-axes">
        {axisTitle(scenario)}, and <Ring />
        {beside.title} beside it
      </h2>
      <div className="report-halves">
        <AxisTable rows={rows.slice(0, half)} />
        <AxisTable rows={rows.slice(half)} />
      </div>
      <p className="report-small">
        <Ring />
        {fittedSentences(scenario, beside.scenario, units).join(' ')}
        {!left.includes('fitted') && <Fitted scenario={scenario} beside={beside} units={units} />}
      </p>
    </section>
  )
}

function AxisTable({ rows }: { rows: ComparedRow[] }) {
  return (
    <table className="report-table">
      <thead>
        <tr>
          <th scope="col">Axis</th>
          <th scope="col">on the bench</th>
          <th scope="col">
            <Ring />
            beside
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, label, unit, note, cells }) => (
          <tr key={id} title={note}>
            <th scope="row">
              {label} <span className="unit">{unit}</span>
            </th>
            <td>{cells[0]}</td>
            <td>{cells[1]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** In running text, as what was changed is. */
export function Fitted({ scenario, beside, units }: Pick<Props, 'scenario' | 'beside' | 'units'>) {
  return (
    <>
      {' '}
      Fitted:{' '}
      {fittedSettings(scenario, beside.scenario, units).map(({ path, label, fitted }, index) => (
        <span key={path}>
          {index > 0 && '; '}
          {label} <b>{fitted}</b>
        </span>
      ))}
      .
    </>
  )
}
