/** How the view writes channels, columns and files. Knows no React. */
import {
  type AnswerChannel,
  answerUnits,
  type Column,
  jobOf,
  LOG_CHANNELS,
  type LogChannel,
  type Scenario,
} from '../../../sim/index.ts'
import { type Quantity, quantityUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import type { OpenLog } from '../../store/log-state.ts'
import { formatPlain, NO_FIGURE, withUnit } from '../../ui/format.ts'
import type { ShownUnit } from '../../ui/unit.ts'

const QUANTITY: Record<string, Quantity> = {
  N: 'force',
  N·m: 'spindleTorque',
  A: 'current',
  V: 'voltage',
  m: 'length',
  'm/s': 'speed',
}

/** Unit in which a channel is drawn. */
export function unitOf({ job }: Pick<Scenario, 'job'>, channel: AnswerChannel, system: UnitSystem): ShownUnit {
  const unit = answerUnits(jobOf({ job }).output)[channel]
  return QUANTITY[unit]
    ? quantityUnit(QUANTITY[unit], system)
    : shownUnit({ unit, ...(SHOWN[unit] && { shown: SHOWN[unit] }) }, system)
}

/** What a column may hold, as choices: what the model is compared with, and what is known only. */
const COMPARED = ['target', 'travel', 'motorTravel', 'speed', 'command', 'current', 'voltage', 'gauge', 'force']
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

export type Held = LogChannel | 'time' | 'nothing'

export const HELD: { value: Held; label: string }[] = [
  { value: 'nothing', label: 'Nothing of use' },
  { value: 'time', label: 'Time' },
  ...LOG_CHANNELS.filter(({ id }) => id !== 'time').map(({ id, label }) => ({ value: id, label: capital(label) })),
]

export const headingOf = (held: Held): string =>
  held === 'nothing' || held === 'time'
    ? ''
    : COMPARED.includes(held)
      ? 'Compared with the model'
      : 'Known, not compared'

/** Customary multiples of SI units. */
const SHOWN: Record<string, string> = { m: 'mm', 'm/s': 'mm/s', rad: 'rev', 'rad/s': 'rev/min' }

/** A value of a column with its unit; as read where its scale is not known. */
export function columnText({ si, scale, unit }: Column, value: number, system: UnitSystem): string {
  if (Number.isNaN(value)) return NO_FIGURE
  if (scale === null) return withUnit(formatPlain(value, 4), unit)
  const shown = shownUnit({ unit: si, ...(SHOWN[si] && { shown: SHOWN[si] }) }, system)
  return withUnit(formatPlain(shown.toShown(value), 4), shown.symbol)
}

export const columnName = ({ header, place }: Pick<Column, 'header' | 'place'>) => header || `Column ${place}`

export function sizeText(bytes: number): string {
  const [size, unit] = bytes < 1e6 ? [bytes / 1e3, 'kB'] : bytes < 1e9 ? [bytes / 1e6, 'MB'] : [bytes / 1e9, 'GB']
  return withUnit(formatPlain(size, 3), unit)
}

/** What a recording is called. */
export function nameOf(logs: readonly OpenLog[], id: number, recording: number): string {
  const log = logs.find((each) => each.id === id)
  const several = (log?.told?.recordings.length ?? 0) > 1
  return `${log?.name ?? ''}${several ? `, recording ${recording + 1}` : ''}`
}
