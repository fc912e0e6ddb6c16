import { type ComparedAxis, fitnessWhy, jobWords, type Scenario, STRATEGIES, wordingOf } from '../../../sim/index.ts'
import { type Column, familyLabel } from '../../read/axes/columns.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { quantityUnit, type UnitSystem } from '../../read/units.ts'
import { Button } from '../../ui/Button.tsx'
import { formatFigure, NO_FIGURE } from '../../ui/format.ts'
import { EffortBar } from './EffortBar.tsx'

interface Props {
  row: ComparedAxis
  columns: Column[]
  scenario: Scenario
  window: { least: number | null; most: number | null }
  wanted: number
  most: number
  units: UnitSystem
  /** It stands beside that of the bench. */
  isBeside: boolean
  take(): void
  putBeside(): void
}

export function AxisRow({ row, columns, scenario, window, wanted, most, units, isBeside, take, putBeside }: Props) {
  const { report } = row
  const { axes } = jobWords(scenario)
  const own = row.id === 'own'
  return (
    <tr data-own={own}>
      <th scope="row">
        <span className="axis-title">{row.title}</span>
        <span className="axis-family">{familyLabel(report.actuator)}</span>
        {!own &&
          (report.scenario ? (
            <span className="axis-acts">
              <Button quiet onClick={take}>
                Put on the bench<span className="sr-only">: {row.title}</span>
              </Button>
              {isBeside ? (
                <span>
                  <Ring />
                  Stands beside it
                </span>
              ) : (
                <Button quiet onClick={putBeside}>
                  Set beside it<span className="sr-only">: {row.title}</span>
                </Button>
              )}
            </span>
          ) : (
            <span className="axis-family">does not go with this drive: {report.faults[0]?.path}</span>
          ))}
      </th>
      <td className="bar-cell">
        <EffortBar report={report} window={window} wanted={wanted} most={most} />
      </td>
      {columns.map((column) => (
        <td key={column.id} className="figure">
          {formatFigure(nullable(column.value(report), (value) => quantityUnit(column.quantity, units).toShown(value)))}
        </td>
      ))}
      <td>{report.backDrivable ? 'yes' : 'no'}</td>
      <td>{report.powerLoss}</td>
      {report.strategies.map((fitness) => (
        <td key={fitness.strategy} className="fitness" data-strategy={fitness.strategy}>
          {fitness.result ? <VerdictWord result={fitness.result} /> : NO_FIGURE}
          <details>
            <summary>
              {fitness.honest ? `${axes.does} as set` : `does not ${axes.act} as set`}
              <span className="sr-only"> by {STRATEGIES.find(({ id }) => id === fitness.strategy)?.label}</span>
            </summary>
            <p>{fitnessWhy(scenario, fitness, wordingOf(units))}</p>
          </details>
        </td>
      ))}
    </tr>
  )
}

const nullable = (value: number | null, shown: (value: number) => number) => (value === null ? null : shown(value))
