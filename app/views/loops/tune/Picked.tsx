import {
  exponentOf,
  type JobId,
  missWhy,
  readPath,
  type Scenario,
  studyWords,
  type TuneCandidate,
  type TuneFigure,
  wordingOf,
} from '../../../../sim/index.ts'
import { editMany, useFault } from '../../../parameters/refusal.ts'
import { fieldAt } from '../../../read/scenario/walk.ts'
import { quantityUnit, shownUnit, type UnitSystem } from '../../../read/units.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { formatFigure, formatPlain } from '../../../ui/format.ts'
import { UnitText } from '../../../ui/Symbols.tsx'
import type { ShownUnit } from '../../../ui/unit.ts'
import { named } from '../scales.ts'
import { OtherParts } from './OtherParts.tsx'
import { differInMore, FIGURES, spareLabel, tuneFigure } from './points.ts'
import type { Search } from './state.ts'

interface Props {
  search: Search
  picked: TuneCandidate
  best: boolean
}

/** Figures and gains of the picked candidate beside those that the bench had when the search began. */
export function Picked({ search, picked, best }: Props) {
  const scenario = useScenario((state) => state.scenario)
  const system = useView((state) => state.units)
  const fault = useFault('tune')
  const { present } = search
  const same = picked.edits.every(({ path, value }) => readPath(scenario, path) === value)
  const untouched = picked.edits.every(({ path }) => readPath(scenario, path) === readPath(search.scenario, path))
  const other = differInMore(scenario, search.scenario, picked)
  return (
    <div className="tune-picked">
      <div className="loops-method-head">
        <h3>{best ? 'Picked: the best' : 'Picked'}</h3>
        <Button disabled={same} aria-label="Use these: robust tune" onClick={() => editMany('tune', picked.edits)}>
          {same ? 'On the bench' : 'Use these'}
        </Button>
      </div>
      <p role="status" className="field-fault">
        {fault}
      </p>
      {other && <p>Other parameters have changed since this search: search again.</p>}
      <table className="loops-table">
        <thead>
          <tr>
            <th scope="col">Figure, gain</th>
            <th scope="col" className="figure">
              picked
            </th>
            <th scope="col" className="figure">
              {untouched ? 'on the bench' : 'before'}
            </th>
          </tr>
        </thead>
        <tbody>
          {figuresOf(search.scenario.job, picked, present, system).map((row) => (
            <RowView key={row.label} row={row} format={formatFigure} />
          ))}
          {gainsOf(picked, search.scenario, system).map((row) => (
            <RowView key={row.label} row={row} format={(value) => formatPlain(value ?? Number.NaN, 4)} />
          ))}
        </tbody>
      </table>
      {present && !present.sound && (
        <p>
          {untouched ? 'The gains on the bench' : 'The gains before'} are not sound:{' '}
          {present.miss && missWhy(present.miss, wordingOf(system))}.
        </p>
      )}
      {search.options.objective === 'share' && <OtherParts search={search} picked={picked} />}
    </div>
  )
}

/** Values in the shown unit; null where there is none. */
interface Row {
  label: string
  symbol: string
  picked: number | null
  before: number | null
}

function RowView({ row, format }: { row: Row; format(value: number | null): string }) {
  return (
    <tr>
      <th scope="row">
        {row.label} <UnitText symbol={row.symbol} />
      </th>
      <td className="figure">{format(row.picked)}</td>
      <td className="figure">{format(row.before)}</td>
    </tr>
  )
}

function figuresOf(job: JobId, picked: TuneCandidate, present: TuneCandidate | null, system: UnitSystem): Row[] {
  const row = (
    label: string,
    key: 'phaseMargin' | 'peakSensitivity' | 'settled' | 'spare' | 'share' | TuneFigure,
    unit: ShownUnit,
  ): Row => {
    const shown = (value: number | null | undefined) =>
      value === null || value === undefined ? null : unit.toShown(value)
    return { label, symbol: unit.symbol, picked: shown(picked[key]), before: shown(present?.[key]) }
  }
  const settled = tuneFigure(job, 'settled', system)
  const held = picked.share !== null || present?.share != null
  return [
    ...(held ? [row(`Parts ${studyWords(job).done}`, 'share', quantityUnit('ratio', system))] : []),
    ...FIGURES.map((key) => {
      const { label, unit } = tuneFigure(job, key, system)
      return row(label, key, unit)
    }),
    row(`Least ${settled.label.toLowerCase()}`, 'settled', settled.unit),
    row(spareLabel(job), 'spare', quantityUnit('ratio', system)),
    row('Least phase margin', 'phaseMargin', named('°')),
    row('Highest peak sensitivity', 'peakSensitivity', named('')),
  ]
}

/** The gains that the search changes; those that are 0 before and after are left out. */
function gainsOf(picked: TuneCandidate, scenario: Scenario, system: UnitSystem): Row[] {
  return picked.edits.flatMap(({ path, value }) => {
    const field = fieldAt(scenario.actuator.kind, path, scenario.job)
    const group = fieldAt(scenario.actuator.kind, path.slice(0, path.lastIndexOf('.')), scenario.job)
    const before = readPath(scenario, path) as number
    if (field?.kind !== 'quantity' || group?.kind !== 'group' || (value === 0 && before === 0)) return []
    const unit = shownUnit(field.schema, system, exponentOf(scenario))
    const label = `${group.title}: ${field.schema.title.toLowerCase()}`
    return { label, symbol: unit.symbol, picked: unit.toShown(value as number), before: unit.toShown(before) }
  })
}
