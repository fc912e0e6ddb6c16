import type { Scenario } from '../../../sim/index.ts'
import type { UnitSystem } from '../../read/units.ts'
import { SymbolText } from '../../ui/Symbols.tsx'
import type { Column } from './columns.ts'
import { changesFrom, type SettingGroup, settingsToEnter } from './settings.ts'

interface Props {
  scenario: Scenario
  /** What the present scenario was changed from. */
  base: Scenario
  columns: Column[]
  units: UnitSystem
}

/** What an engineer enters into the drive, and what else was changed from the scenario that was opened. */
export function Settings({ scenario, base, columns, units }: Props) {
  const shown = columns.map(({ strategy }) => strategy)
  const groups = settingsToEnter(scenario, base, shown, units)
  const { from, others } = changesFrom(base, scenario, groups, units)
  const changed = groups.some(({ settings }) => settings.some(({ before }) => before !== ''))
  return (
    <section aria-labelledby="report-settings">
      <h2 id="report-settings">Settings to enter</h2>
      <SettingTable groups={groups} />
      {changed && <p className="report-small">In brackets: {from}.</p>}
      {others.length > 0 && (
        <p className="report-small">
          Also changed from {from}:{' '}
          {others.map(({ path, label, value, before }, index) => (
            <span key={path}>
              {index > 0 && '; '}
              {label} <b>{value}</b> ({before})
            </span>
          ))}
          .
        </p>
      )}
    </section>
  )
}

export function SettingTable({ groups }: { groups: SettingGroup[] }) {
  return (
    <table className="report-table">
      {groups.map(({ title, settings }) => (
        <tbody key={title}>
          <tr className="report-head">
            <th scope="rowgroup" colSpan={2}>
              {title}
            </th>
          </tr>
          {settings.map(({ path, label, symbol, value, before }) => (
            <tr key={path}>
              <th scope="row">
                {label} <SymbolText symbol={symbol} />
              </th>
              <td data-changed={before !== ''}>
                {value} {before !== '' && <span className="report-share">({before})</span>}
              </td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  )
}
