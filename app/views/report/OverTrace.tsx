import { type Scenario, shownAs } from '../../../sim/index.ts'
import { acrossUnit, type Over, overOf } from '../../read/effort/over.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Column } from './columns.ts'
import { Trace } from './Trace.tsx'
import { overGround } from './trace.ts'

interface Props {
  scenario: Scenario
  column: Column
  over: Over
  units: UnitSystem
  /** All that are to be compared with it; left out: it stands alone. */
  columns?: Column[]
}

/** The effort of a strategy over what the job is told by, with the band that it has to stay in. */
export function OverTrace({ scenario, column, over, units, columns = [column] }: Props) {
  const runs = columns.flatMap(({ run, beside }) => [run ?? [], beside ?? []].flat())
  const ground = overGround(over, scenario, runs, acrossUnit(over, units))
  return (
    <figure className="report-picture report-over">
      <Trace {...{ scenario, ground, over, units }} run={column.run} beside={column.beside} />
      <figcaption>
        {column.label}: {lowerFirst(shownAs(scenario).effort)} {over.title}
      </figcaption>
    </figure>
  )
}

/** Those of all strategies side by side, for the further pages; none where the job is told over time alone. */
export function OverTraces({ scenario, columns, units }: Pick<Props, 'scenario' | 'units'> & { columns: Column[] }) {
  const over = overOf(scenario)
  if (!over || columns.length === 0) return null
  const { effort } = shownAs(scenario)
  return (
    <section aria-labelledby="report-over">
      <h2 id="report-over">
        {effort} {over.title}
      </h2>
      <div className="report-overs">
        {columns.map((column) => (
          <OverTrace key={column.strategy} {...{ scenario, column, columns, over, units }} />
        ))}
      </div>
    </section>
  )
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)
