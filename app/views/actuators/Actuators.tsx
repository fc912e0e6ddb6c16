import { useMemo, useState } from 'react'
import { type ComparedAxis, jobOf, jobWords, type Scenario, strategiesOn, wantedEffort } from '../../../sim/index.ts'
import { BesideLine } from '../../read/axes/BesideLine.tsx'
import { type Column, columnsOf } from '../../read/axes/columns.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import { putAxis } from '../../read/scenario/putAxis.ts'
import { effortQuantity, quantityUnit, type UnitSystem } from '../../read/units.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { AxisRow } from './AxisRow.tsx'
import { type Filter, filtersOf } from './filters.ts'
import { useAxes } from './useAxes.ts'
import './actuators.css'

interface Sort {
  column: string
  down: boolean
}

/** Which axis suits the job: every family and the axis on the bench in one table, with a bar of effort each. */
export function Actuators() {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { rows, status, message } = useAxes(scenario)
  const [chosen, setChosen] = useState<string[]>([])
  const job = jobOf(scenario)
  const { axes, study } = jobWords(scenario)
  const filters = filtersOf(scenario)
  const window = job.study.window(scenario)
  const wanted = wantedEffort(scenario)
  const effort = quantityUnit(effortQuantity(scenario), units)
  const most = 4 * Math.max(wanted, window.least ?? 0, Math.min(window.most ?? 0, 4 * wanted))
  const say = (value: number) => `${formatFigure(effort.toShown(value))} ${effort.symbol}`
  return (
    <div className="actuators">
      <WindowLine />
      <BesideLine />
      <div className="actuators-head">
        <h1>{axes.asks}</h1>
        <p>
          Each axis with gains matched to what it moves and its settings to the {axes.wanted} that is wanted on the
          bench, {say(wanted)}. Generic data, no maker’s.
        </p>
        <p className="bar-key">
          Bars: <b className="key continuous" /> continuous <b className="key peak" /> peak{' '}
          <b className="key hidden-force" /> what friction may take of the wanted {study.effort} or add{' '}
          <b className="key window" /> window. The scale widens what is small and ends at {say(most)}.
        </p>
        <p role="status" className="progress">
          {status === 'running' && `Comparing … ${rows.length} axes so far.`}
          {status === 'failed' && `The comparison could not be finished: ${message}`}
        </p>
      </div>
      <Filters {...{ filters, chosen, rows }} onChoose={setChosen} />
      <AxesTable rows={narrowed(rows, filters, chosen)} {...{ scenario, window, wanted, most, units }} />
    </div>
  )
}

interface FiltersProps {
  filters: Filter[]
  chosen: string[]
  onChoose(chosen: string[]): void
  rows: ComparedAxis[]
}

/** What the table is narrowed to, and to how many axes. */
function Filters({ filters, chosen, onChoose, rows }: FiltersProps) {
  const others = rows.filter(({ id }) => id !== 'own')
  return (
    <fieldset className="axis-filters">
      <legend>Only axes with</legend>
      {filters.map(({ id, label }) => (
        <label key={id} className="toggle">
          <input
            type="checkbox"
            checked={chosen.includes(id)}
            onChange={({ target }) => onChoose(target.checked ? [...chosen, id] : chosen.filter((each) => each !== id))}
          />
          {label}
        </label>
      ))}
      <span role="status">
        {chosen.length > 0 &&
          `${narrowed(others, filters, chosen).length} of ${others.length}, and the one on the bench for comparison.`}
      </span>
    </fieldset>
  )
}

/** The axis on the bench always stays, for comparison. */
function narrowed(rows: ComparedAxis[], filters: Filter[], chosen: string[]): ComparedAxis[] {
  const asked = filters.filter(({ id }) => chosen.includes(id))
  return rows.filter(({ id, report }) => id === 'own' || asked.every(({ passes }) => passes(report)))
}

interface AxesTableProps {
  scenario: Scenario
  rows: ComparedAxis[]
  window: { least: number | null; most: number | null }
  /** Effort that is wanted, and the end of the scale [N or N·m]. */
  wanted: number
  most: number
  units: UnitSystem
}

function AxesTable({ scenario, rows, window, wanted, most, units }: AxesTableProps) {
  const columns = useMemo(() => columnsOf(scenario), [scenario])
  const { study } = jobWords(scenario)
  const [sort, setSort] = useState<Sort>({ column: 'family', down: false })
  const beside = useScenario((state) => state.beside)
  const { setBeside } = useScenario.getState()
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="axes-scroll" tabIndex={0} aria-label="Comparison of axes">
      <table>
        <thead>
          <tr>
            <Heading id="family" label="Axis" sort={sort} onSort={setSort} />
            <th scope="col" className="bar-cell">
              {study.effort[0]!.toUpperCase() + study.effort.slice(1)}
            </th>
            {columns.map(({ id, label, note, quantity }) => (
              <Heading
                key={id}
                id={id}
                label={label}
                unit={quantityUnit(quantity, units).symbol}
                note={note}
                sort={sort}
                onSort={setSort}
              />
            ))}
            <th scope="col">Back-drivable</th>
            <th scope="col">Power loss</th>
            {strategiesOn(jobOf(scenario)).map(({ id, label }) => (
              <th key={id} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sorted(rows, sort, columns).map((row) => (
            <AxisRow
              key={row.id}
              row={row}
              columns={columns}
              scenario={scenario}
              window={window}
              wanted={wanted}
              most={most}
              units={units}
              isBeside={beside !== null && row.title === beside.title}
              take={() => {
                if (putAxis({ title: row.title, actuator: row.report.actuator })) useView.setState({ view: 'bench' })
              }}
              putBeside={() => {
                setBeside({ title: row.title, actuator: row.report.actuator })
                useView.setState({ view: 'bench' })
              }}
            />
          ))}
        </tbody>
      </table>
    </section>
  )
}

interface HeadingProps {
  id: string
  label: string
  unit?: string
  note?: string
  sort: Sort
  onSort(sort: Sort): void
}

function Heading({ id, label, unit = '', note, sort, onSort }: HeadingProps) {
  const active = sort.column === id
  return (
    <th scope="col" aria-sort={active ? (sort.down ? 'descending' : 'ascending') : 'none'}>
      <button type="button" title={note} onClick={() => onSort({ column: id, down: active && !sort.down })}>
        {label}
        {unit && <span className="unit"> {unit}</span>}
        <span aria-hidden="true">{active ? (sort.down ? ' ↓' : ' ↑') : ''}</span>
      </button>
    </th>
  )
}

/** The axis on the bench stays first; a figure that does not exist comes last. */
function sorted(rows: ComparedAxis[], { column, down }: Sort, columns: Column[]): ComparedAxis[] {
  const own = rows.filter(({ id }) => id === 'own')
  const others = rows.filter(({ id }) => id !== 'own')
  const chosen = columns.find(({ id }) => id === column)
  if (!chosen) return [...own, ...(down ? others.reverse() : others)]
  const figure = ({ report }: ComparedAxis) => chosen.value(report) ?? Number.POSITIVE_INFINITY
  others.sort((a, b) => (down ? figure(b) - figure(a) : figure(a) - figure(b)))
  return [...own, ...others]
}
