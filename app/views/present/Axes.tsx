import { comparedAxes } from '../../read/axes/compare.ts'
import { fittedSentences } from '../../read/axes/fitted.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { useBeside } from '../../store/beside.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { NoRun } from './NoRun.tsx'
import type { SlideProps } from './Present.tsx'

/** The two axes figure by figure: what each is, and what came of it under the same part. */
export function Axes({ runs, beside }: SlideProps) {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const second = useBeside()
  if (!second?.fitted.ok || runs.length === 0) return <NoRun />
  const other = second.fitted.scenario
  const rows = comparedAxes(
    { scenario, results: runs.map(({ result }) => result) },
    { scenario: other, results: beside.map(({ result }) => result) },
    units,
  )
  return (
    <div className="axes-slide">
      <table>
        <thead>
          <tr>
            <td />
            <td className="axes-note" />
            <th scope="col">{axisTitle(scenario)}</th>
            <th scope="col">
              <Ring />
              {second.axis.title}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, label, unit, note, cells }) => (
            <tr key={id}>
              <th scope="row">
                {label} <span className="unit">{unit}</span>
              </th>
              <td className="axes-note">{note}</td>
              <td>{cells[0]}</td>
              <td>{cells[1]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="axes-fitted">
        <Ring />
        {fittedSentences(scenario, other, units).join(' ')}
      </p>
    </div>
  )
}
