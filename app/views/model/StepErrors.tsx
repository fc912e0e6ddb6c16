import { STRATEGIES } from '../../../sim/index.ts'
import { quantityUnit, shownUnit } from '../../read/units.ts'
import { useResults } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'

/** Step and step error of the runs on the bench. */
export function StepErrors() {
  const runs = useResults((state) => state.runs)
  const units = useView((state) => state.units)
  const step = shownUnit({ unit: 's', shown: 'µs' }, units)
  const ratio = quantityUnit('ratio', units)
  const shown = STRATEGIES.flatMap(({ id, label }) => {
    const result = runs[id]?.result
    return result ? [{ id, label, result }] : []
  })
  if (shown.length === 0) return <p>The bench shows no run, so there is no step error to state.</p>
  return (
    <table className="model-table" aria-label="Step error of the runs on the bench">
      <thead>
        <tr>
          <th scope="col">Run on the bench</th>
          <th scope="col" className="figure">
            Step <span className="unit">{step.symbol}</span>
          </th>
          <th scope="col" className="figure">
            Step error <span className="unit">{ratio.symbol}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {shown.map(({ id, label, result }) => (
          <tr key={id}>
            <th scope="row">{label}</th>
            <td className="figure">{formatFigure(step.toShown(result.step))}</td>
            <td className="figure">
              {formatFigure(result.stepError === null ? null : ratio.toShown(result.stepError))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
