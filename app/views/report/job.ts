/** The job in words: what is worked on, the axis, and what happens meanwhile, each as a list of what matters. Knows no React. */
import { type Key, notesWith, readPath, type Scenario, shownAs } from '../../../sim/index.ts'
import { settingText } from '../../read/scenario/setting.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Fitting } from '../../store/fitted.ts'

export interface Item {
  label: string
  value: string
}

export const workItems = (scenario: Scenario, units: UnitSystem): Item[] =>
  shownAs(scenario).sheet.work.keys.flatMap((key) => itemOf(scenario, key, units))

export const axisItems = (scenario: Scenario, units: UnitSystem): Item[] =>
  shownAs(scenario).sheet.axis.flatMap((key) => itemOf(scenario, key, units))

/** `most`: entries of a list that are told one by one. */
export function courseItems(scenario: Scenario, units: UnitSystem, most = Number.POSITIVE_INFINITY): Item[] {
  const { events, run } = scenario
  const at = (path: string) => textAt(scenario, path, units)
  return [
    ...shownAs(scenario).sheet.course.keys.flatMap((key) => itemOf(scenario, key, units)),
    ...listItems(scenario, units, most),
    ...(events.powerLoss
      ? [
          {
            label: 'Power loss',
            value: `at ${at('events.powerLoss.time')}, windings ${at('events.powerLoss.windings')}`,
          },
        ]
      : []),
    ...(events.release ? [{ label: 'Release', value: `at ${at('events.release.time')}` }] : []),
    { label: 'Run', value: at('run.duration') },
    ...(run.cycle === null ? [] : [{ label: 'Cycle', value: at('run.cycle') }]),
  ]
}

/** Moves of the arm, ramps of the line: whatever of the like the job has. */
function listItems(scenario: Scenario, units: UnitSystem, most: number): Item[] {
  const { list } = shownAs(scenario).sheet.course
  if (!list) return []
  const texts = entryTexts(scenario, units)
  if (texts.length === 0) return list.none === '' ? [] : [{ label: '', value: list.none }]
  const told = texts.slice(0, most).map((value, index) => ({ label: `${list.item} ${index + 1}`, value }))
  const rest = texts.length - told.length
  return [...told, ...(rest > 0 ? [{ label: '', value: `and ${rest} more` }] : [])]
}

/** Each entry of that list in words. */
export function entryTexts(scenario: Scenario, units: UnitSystem): string[] {
  const { list } = shownAs(scenario).sheet.course
  const entries = list ? (readPath(scenario, list.path) as unknown[]) : []
  return entries.map((_, index) => list!.text((key) => textAt(scenario, `${list!.path}[${index}].${key}`, units)))
}

/** A choice without a name of its own says what it is by itself. */
function itemOf(scenario: Scenario, key: Key, units: UnitSystem): Item[] {
  const [path, name] = typeof key === 'string' ? [key, null] : key
  const field = fieldAt(scenario.actuator.kind, path, scenario.job)
  const value = readPath(scenario, path)
  if (!field || value === undefined || value === null || isIdle(scenario, path)) return []
  if (field.kind === 'choice') {
    const text = textAt(scenario, path, units)
    return [name === null ? { label: '', value: capital(text) } : { label: name, value: text }]
  }
  const title = field.kind === 'quantity' ? field.schema.title : field.title
  return [{ label: name ?? title, value: settingText(scenario, path, value, units) }]
}

/** A part that does not relax has no time in which it does. */
const isIdle = (scenario: Scenario, path: string) =>
  path.startsWith('part.relaxation.') && scenario.part.relaxation.fraction === 0

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** The notes, without what they say of a fit where the page has a part about it. */
export const notesOf = ({ notes }: Scenario, fitting: Fitting | null) => (fitting ? notesWith(notes, '') : notes)
