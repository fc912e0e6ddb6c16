/** Every line at the two cursors, and what lies between them. */
import { formatFigure } from '../format.ts'
import { UnitText } from '../Symbols.tsx'
import type { ChartGroup } from './group.ts'
import { readingOf } from './reading.ts'

export default function Readout({ group, name }: { group: ChartGroup; name: string }) {
  group.use()
  const reading = readingOf(group)
  if (!reading) return null
  const [first, second, difference] = reading.heads
  return (
    <table className="chart-readout">
      <caption className="sr-only">{name} at the two cursors</caption>
      <thead>
        <tr>
          <th scope="col">{reading.axis}</th>
          <th scope="col">{first}</th>
          <th scope="col">{second}</th>
          <th scope="col">Difference {difference}</th>
        </tr>
      </thead>
      <tbody>
        {reading.rows.map(({ chart, line, unit, values }) => (
          <tr key={`${chart} ${line}`}>
            <th scope="row">
              {chart}, {line} <UnitText symbol={unit} />
            </th>
            {values.map((value, place) => (
              <td key={place}>{formatFigure(value)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
