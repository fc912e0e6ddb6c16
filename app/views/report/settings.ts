/** The settings that an engineer enters into the drive, and what differs from the scenario that was opened. Knows no React. */
import { ALL_PRESETS, readPath, type Scenario, STRATEGIES, type StrategyId, shownAs } from '../../../sim/index.ts'
import { differingPaths } from '../../read/scenario/changes.ts'
import { settingLabel, settingText } from '../../read/scenario/setting.ts'
import { type Field, fieldAt, topKeys } from '../../read/scenario/walk.ts'
import type { UnitSystem } from '../../read/units.ts'
import { entryTexts } from './job.ts'

export interface Setting {
  path: string
  label: string
  symbol: string
  value: string
  /** What the opened scenario has, where that differs; '' else. */
  before: string
}

export interface SettingGroup {
  title: string
  settings: Setting[]
}

/** Keys beside the settings that are properties of the hardware or models of its errors. */
const HARDWARE = ['drive.busVoltage', 'drive.currentResolution', 'drive.currentNoise', 'drive.currentOffset']

export function settingsToEnter(
  scenario: Scenario,
  base: Scenario,
  shown: StrategyId[],
  units: UnitSystem,
): SettingGroup[] {
  const groups = STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ setting }) =>
    setting.path.split('.').slice(0, 2).join('.'),
  )
  const own = shownAs(scenario).sheet.settings
  return ['approach', ...own, 'servo', 'drive', ...groups].map((path) => groupAt(scenario, base, path, units, HARDWARE))
}

/** Every parameter of the scenario. */
export const allParameters = (scenario: Scenario, base: Scenario, units: UnitSystem): SettingGroup[] =>
  topKeys(scenario.actuator.kind, scenario.job)
    .filter((key) => key !== 'name' && key !== 'notes')
    .flatMap((key) => {
      const field = fieldAt(scenario.actuator.kind, key, scenario.job)
      const parts = field?.kind === 'group' && (key === 'actuator' || key === 'strategies') ? field.fields : []
      const paths = parts.filter(({ kind }) => kind === 'group').map(({ path }) => path)
      return paths.length > 0 ? paths : [key]
    })
    .map((path) => groupAt(scenario, base, path, units, []))
    .filter(({ settings }) => settings.length > 0)

function groupAt(
  scenario: Scenario,
  base: Scenario,
  path: string,
  units: UnitSystem,
  leaveOut: string[],
): SettingGroup {
  const field = fieldAt(scenario.actuator.kind, path, scenario.job)
  if (field?.kind !== 'group') return { title: path, settings: [] }
  return { title: field.title, settings: settingsIn(field.fields, scenario, base, units, leaveOut, '') }
}

function settingsIn(
  fields: Field[],
  scenario: Scenario,
  base: Scenario,
  units: UnitSystem,
  leaveOut: string[],
  before: string,
): Setting[] {
  return fields.flatMap((field): Setting[] => {
    const { path } = field
    const value = readPath(scenario, path)
    if (leaveOut.includes(path) || value === undefined || value === null) return []
    const inside = (inner: Field[], title: string) => settingsIn(inner, scenario, base, units, leaveOut, title)
    if (field.kind === 'group') return inside(field.fields, `${field.title}, `)
    if (field.kind === 'list')
      return (value as unknown[]).flatMap((_, index) => inside(field.fieldsAt(index), `${field.item} ${index + 1}, `))
    const title = field.kind === 'quantity' ? field.schema.title : field.title
    const old = readPath(base, path)
    return [
      {
        path,
        label: before ? before + lowerFirst(title) : title,
        symbol: field.kind === 'quantity' ? field.schema.symbol : '',
        value: settingText(scenario, path, value, units),
        before: Object.is(old, value) ? '' : settingText(base, path, old, units),
      },
    ]
  })
}

export interface Changes {
  /** `preset “…”` or `opened scenario`. */
  from: string
  /** Label, value and value before, of every key that is not among the settings listed elsewhere. */
  others: { path: string; label: string; value: string; before: string }[]
}

export function changesFrom(base: Scenario, scenario: Scenario, listed: SettingGroup[], units: UnitSystem): Changes {
  const seen = new Set(listed.flatMap(({ settings }) => settings.map(({ path }) => path)))
  const list = shownAs(scenario).sheet.course.list
  const textOf = (of: Scenario, path: string) =>
    path === list?.path ? entryTexts(of, units).join(' / ') || 'none' : settingText(of, path, readPath(of, path), units)
  return {
    from: ALL_PRESETS.some((preset) => preset.scenario === base)
      ? `the preset “${base.name}”`
      : 'the scenario as opened',
    others: differingPaths([base, scenario])
      .filter((path) => !seen.has(path) && path !== 'name')
      .map((path) => ({
        path,
        label: settingLabel(scenario.actuator.kind, path, scenario.job),
        value: textOf(scenario, path),
        before: textOf(base, path),
      })),
  }
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)
