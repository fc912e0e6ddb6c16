import { type FittedValue, freeName, intervalText, type Scenario, type Untold } from '../../../sim/index.ts'
import { NO_FIGURE } from '../../ui/format.ts'
import type { UnitSystem } from '../units.ts'
import { fittedWriter } from './values.ts'

interface Props {
  values: FittedValue[]
  scenario: Scenario
  units: UnitSystem
  className: string
  /** Marks the values that are in doubt. */
  untold?: Untold[]
}

/** Fitted values with what stood there before and their intervals. */
export function ValueTable({ values, scenario, units, className, untold = [] }: Props) {
  return (
    <table className={className}>
      <thead>
        <tr>
          <th scope="col">Quantity</th>
          <th scope="col">was</th>
          <th scope="col">fitted</th>
          <th scope="col">95 % interval</th>
        </tr>
      </thead>
      <tbody>
        {values.map((each) => {
          const write = fittedWriter(scenario, each.path, units)
          const doubted = untold.some(({ kind, paths }) => kind !== 'ratio' && paths.some((path) => path === each.path))
          return (
            <tr key={each.path} data-doubted={doubted}>
              <th scope="row">{freeName(scenario, each.path)}</th>
              <td>{each.from === null ? NO_FIGURE : write(each.from)}</td>
              <td>{write(each.value)}</td>
              <td>{intervalText(each, write)}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
