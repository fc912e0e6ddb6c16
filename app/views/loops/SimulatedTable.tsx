import type { LoopsResult, SimulatedStep, SimulatedSteps } from '../../../sim/index.ts'
import { pointLabel } from '../../read/loops/lines.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, formatPlain, withUnit } from '../../ui/format.ts'
import { remarks, stepUnit } from './simulated.ts'

/** Size of each simulated step, how far it lies from the linear one, and where it leaves the linear range. */
export function SimulatedTable({ result, simulated }: { result: LoopsResult; simulated: SimulatedSteps }) {
  const system = useView((state) => state.units)
  const { job } = result.friction
  const unit = stepUnit(simulated.loop, job, system)
  const size = ({ size: si }: SimulatedStep) => withUnit(formatPlain(unit.toShown(si), 3), unit.symbol)
  return (
    <table className="loops-table">
      <thead>
        <tr>
          <th scope="col">Simulated</th>
          <th scope="col" className="figure">
            Step
          </th>
          <th scope="col" className="figure">
            Off by <span className="unit">%</span>
          </th>
          <th scope="col">Not linear</th>
        </tr>
      </thead>
      <tbody>
        {simulated.steps.map((step) => (
          <tr key={step.workingPoint}>
            <th scope="row">{pointLabel(result, step.workingPoint)}</th>
            <td className="figure">{size(step)}</td>
            <td className="figure">{formatFigure(100 * step.deviation, 2)}</td>
            <td>{remarks(simulated, step, job).join(', ') || 'nothing'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
