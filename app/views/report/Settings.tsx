import { type Scenario, type StrategyId, strategyOf } from '../../../sim/index.ts'
import type { UnitSystem } from '../../read/units.ts'
import { SymbolText } from '../../ui/Symbols.tsx'
import type { Leaving } from './fit.ts'
import { type Changes, changesFrom, type SettingGroup, settingsToEnter } from './settings.ts'

interface Props {
  scenario: Scenario
  /** What the present scenario was changed from. */
  base: Scenario
  /** The strategy that is handed over. */
  strategy: StrategyId
  units: UnitSystem
  left: readonly Leaving[]
}

/** Settings that stay on a page that is full. */
const SHORT_SETTINGS = 24

/** What an engineer enters into the drive for the strategy handed over, and what else was changed from the scenario that was opened. */
export function Settings({ scenario, base, strategy, units, left }: Props) {
  const groups = settingsToEnter(scenario, base, [strategy], units)
  const { from, others } = changesFrom(base, scenario, groups, units)
  const changed = groups.some(({ settings }) => settings.some(({ before }) => before !== ''))
  return (
    <section aria-labelledby="report-settings">
      <h2 id="report-settings">Settings to enter, {strategyOf(strategy).label.toLowerCase()}</h2>
      <SettingTable groups={left.includes('settings') ? firstOf(groups, SHORT_SETTINGS) : groups} />
      {changed && <p className="report-small">In brackets: {from}.</p>}
      {!left.includes('changes') && <Changed from={from} others={others} />}
    </section>
  )
}

/** What was changed beside the settings. */
export function Changed({ from, others }: Changes) {
  if (others.length === 0) return null
  return (
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
  )
}

/** The first settings of all groups, as many as told. */
function firstOf(groups: SettingGroup[], most: number): SettingGroup[] {
  let room = most
  return groups.flatMap((group) => {
    const settings = group.settings.slice(0, Math.max(0, room))
    room -= settings.length
    return settings.length > 0 ? [{ ...group, settings }] : []
  })
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
