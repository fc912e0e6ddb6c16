/** What stands out in a log. */
import type { Channel } from './channels.ts'
import type { LogRemark } from './facts.ts'
import { type Guessed, headingOf, nameOf } from './guess.ts'
import { kinshipOf } from './kinship.ts'
import { type Column, channelOf, type Recording } from './log.ts'
import { wordsOf } from './names.ts'
import type { Stats } from './stats.ts'
import type { Table } from './table.ts'

/** Limits of integers of 16 bits, with sign and without. */
const LIMITS = [-32768, 32767, 65535]
/** Steps of resolution across the whole span below which a column is coarse. */
const COARSE = 50
/** Share of rows with the stamp of the row before that is worth saying. */
const REPEATED = 0.3

const RAW = ['raw', 'counts', 'count', 'adc', 'digit', 'digits', 'lsb', 'inc', 'ticks']

/** A column in newtons that is figure by figure its neighbour in counts is in counts as well. */
export function countsInDisguise(guesses: readonly Guessed[]): void {
  for (const guess of guesses) {
    if (!guess.known?.size || guess.choice || guess.channel === 'time') continue
    const twin = guesses.find((other) => other !== guess && isRaw(other) && isSame(guess, other))
    if (!twin) continue
    guess.known = null
    guess.reason = { kind: 'counts', column: nameOf(twin) }
  }
}

const isRaw = ({ known, header }: Guessed) =>
  known?.text === 'counts' || wordsOf(header).some((word) => RAW.includes(word))

function isSame({ raw: a, stats: one }: Guessed, { raw: b, stats: other }: Guessed): boolean {
  if (one.least !== other.least || one.most !== other.most || one.least === one.most || one.missing !== other.missing)
    return false
  return a.values.every((value, row) => Object.is(value, b.values[row]))
}

/** What is plain before anything is understood. */
export const tableRemarks = ({ misnamed, columns, layout }: Table): LogRemark[] => [
  ...(misnamed > 0 ? [{ kind: 'misnamed' as const, names: misnamed, columns: columns.length }] : []),
  ...(layout && layout.thinned > 1 ? [{ kind: 'thinned' as const, every: layout.thinned }] : []),
]

export function remarksOn(table: Table, stats: readonly Stats[], recordings: readonly Recording[]): LogRemark[] {
  const all = recordings.flatMap((recording) => recording.columns)
  const places = [...new Map(all.map((column) => [column.place, column])).values()]
  return [
    ...tableRemarks(table),

    ...repeats(recordings),
    ...places.flatMap(({ place, header, channel, scale, unit, reason }): LogRemark[] => {
      const column = nameOf({ header, place })
      const raw = table.columns[place - 1]!
      const own = all.filter((each) => each.place === place)
      const remarks: LogRemark[] = [
        ...limits(column, raw.values, stats[place - 1]!),
        ...doubles(column, place, table, stats),
      ]
      if (channel && own.every(({ least, most }) => least === most)) remarks.push({ kind: 'constant', column, channel })
      if (channel && own.some(({ least, most }) => least < most))
        remarks.push(...atLimit(column, place, channel, recordings))
      if (channel && scale === null)
        remarks.push({ kind: 'unknown-scale', column, unit: reason.kind === 'counts' ? 'counts' : unit, channel })
      const steps = Math.max(
        ...own.map(({ least, most, resolution }) => (resolution > 0 ? (most - least) / resolution : 0)),
      )
      if (channel && channel !== 'flag' && channel !== 'recording' && steps > 0 && steps < COARSE)
        remarks.push({ kind: 'coarse', column, steps: Math.round(steps) })
      return remarks
    }),
    ...kin(recordings),
    ...(moves(recordings) ? [] : [{ kind: 'still' as const }]),
  ]
}

function repeats(recordings: readonly Recording[]): LogRemark[] {
  const rows = recordings.reduce((sum, recording) => sum + recording.repeated, 0)
  const of = recordings.reduce((sum, recording) => sum + recording.rows, rows)
  return rows > REPEATED * of ? [{ kind: 'repeated', rows, of }] : []
}

function limits(column: string, values: Float64Array, { least, most }: Stats): LogRemark[] {
  return LIMITS.filter((value) => value === least || value === most).flatMap((value): LogRemark[] => {
    const rows = values.reduce((sum, each) => sum + (each === value ? 1 : 0), 0)
    return [{ kind: 'limit-of-bits', column, value, rows }]
  })
}

const GIVEN: Channel[] = ['voltage', 'command', 'current']
/** Share of the rows on an extreme from which it is a limit. */
const ON_LIMIT = 0.1

function atLimit(column: string, place: number, channel: Channel, recordings: readonly Recording[]): LogRemark[] {
  if (!GIVEN.includes(channel)) return []
  return recordings.flatMap((recording): LogRemark[] => {
    const at = recording.columns.findIndex((each) => each.place === place)
    const own: Column | undefined = recording.columns[at]
    if (!own || own.least === own.most) return []
    return [own.least, own.most].flatMap((value): LogRemark[] => {
      const share = recording.values[at]!.reduce((sum, each) => sum + (each === value ? 1 : 0), 0) / recording.rows
      return value !== 0 && share >= ON_LIMIT && (own.most - own.least) / own.resolution > COARSE
        ? [{ kind: 'at-limit', column, channel, value, share }]
        : []
    })
  })
}

/** How far off one the ratio may be, and lags in steps that are worth saying. */
const UNLIKE = 0.1
const LAG = 3

function kin(recordings: readonly Recording[]): LogRemark[] {
  return recordings.slice(0, 1).flatMap((recording): LogRemark[] => {
    const kinship = kinshipOf(recording)
    if (!kinship) return []
    const [position, speed] = (['travel', 'speed'] as const).map((channel) =>
      nameOf(channelOf(recording, channel)!.column),
    )
    const names = { position: position!, speed: speed! }
    return [
      ...(Math.abs(kinship.ratio - 1) > UNLIKE ? [{ kind: 'unlike' as const, ...names, ratio: kinship.ratio }] : []),
      ...(kinship.lag >= LAG * recording.step ? [{ kind: 'lags' as const, ...names, lag: kinship.lag }] : []),
    ]
  })
}

/** An earlier column of the same figures, of those that change. */
function doubles(column: string, place: number, { columns }: Table, stats: readonly Stats[]): LogRemark[] {
  const { values } = columns[place - 1]!
  const own = stats[place - 1]!
  const other = columns.findIndex(
    (each, index) =>
      index < place - 1 &&
      own.resolution > 0 &&
      own.least === stats[index]!.least &&
      each.values.every((value, row) => Object.is(value, values[row])),
  )
  return other < 0 ? [] : [{ kind: 'same', column, other: headingOf(columns[other]!).name || `#${other + 1}` }]
}

/** Steps of its resolution within which a position stands still. */
const STILL = 2

/** Whether anything moves, as far as a position or a speed tells; true where neither is known. */
function moves(recordings: readonly Recording[]): boolean {
  const told = recordings.flatMap((recording) =>
    (['travel', 'motorTravel', 'speed'] as const).flatMap((channel) => {
      const found = channelOf(recording, channel)
      return found ? [found.column] : []
    }),
  )
  return (
    told.length === 0 || told.some(({ least, most, resolution }) => most - least > STILL * resolution && most > least)
  )
}
