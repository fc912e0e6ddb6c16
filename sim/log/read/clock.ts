/** How time is told: which column is a clock, in which unit, or at which rate rows follow each other. */
import type { LogFault, LogRemark } from './facts.ts'
import { type Guessed, nameOf } from './guess.ts'
import type { Choices, Clock } from './log.ts'
import { frequencyIn, periodIn, periodLine, rateIn, type Saying, ticksIn } from './preamble.ts'
import { slopeOf } from './slope.ts'
import { medianRise } from './stats.ts'
import type { Table } from './table.ts'
import { measures } from './units.ts'

/** One clock of the file and the columns that it stands before. */
export interface Group {
  clock: Clock
  /** Raw stamps; null: rows follow each other at the rate. */
  stamps: Float64Array | null
  columns: Guessed[]
}

export interface Clocks {
  groups: Group[]
  faults: LogFault[]
  remarks: LogRemark[]
}

/** `guesses` may change: a clock too many, or one that does not rise, is none. */
export function clocksOf(table: Table, guesses: readonly Guessed[], { rate }: Choices): Clocks {
  const times = rate === undefined ? guesses.filter((guess) => guess.channel === 'time' && rises(guess)) : []
  for (const guess of guesses)
    if (guess.channel === 'time' && !times.includes(guess)) {
      guess.channel = null
      guess.reason = { kind: rate === undefined ? 'no-clock' : 'rate' }
    }
  const asked = times.filter(({ choice }) => choice)
  const clocks = distinct(asked.length > 0 ? alone(times, asked[0]!) : times, guesses)
  const values = guesses.filter(
    ({ channel, raw }) =>
      channel !== 'time' && (raw.name !== '' || raw.unit !== '' || !Number.isNaN(least(raw.values))),
  )
  if (clocks.length === 0) return byRate(table, values, rate)
  return byColumns(table, values, clocks)
}

const least = (values: Float64Array) => values.find((value) => !Number.isNaN(value)) ?? Number.NaN

/** A clock rises nearly always; noise rises and falls alike. One that mostly falls is a clock that runs backwards. */
function rises({ stats: { rises: up, falls }, choice }: Guessed): boolean {
  return choice !== null || (up + falls > 0 && (falls <= 0.3 * up || up <= 0.3 * falls))
}

/** The one that a person names is the only one. */
function alone(times: Guessed[], asked: Guessed): Guessed[] {
  for (const time of times) if (time !== asked) second(time, asked)
  return [asked]
}

function second(time: Guessed, first: Guessed): void {
  time.channel = null
  time.reason = { kind: 'second-clock', column: nameOf(first) }
}

/** Without those that tell the same time again: a stamp of the day beside a relative time, or one before no column of its own. */
function distinct(times: Guessed[], guesses: readonly Guessed[]): Guessed[] {
  const kept: Guessed[] = []
  for (const time of times) {
    const twin = kept.find((other) => isTwin(other, time, guesses))
    if (!twin) kept.push(time)
    else if (rank(time) > rank(twin)) {
      kept[kept.indexOf(twin)] = time
      second(twin, time)
    } else second(time, twin)
  }
  return kept
}

/** Relative and in a known unit is best. */
const rank = ({ known, stats, raw }: Guessed) =>
  (raw.stamps || (known && measures(known, 's')) ? 2 : 0) + (stats.least < 1e9 ? 1 : 0)

function isTwin(a: Guessed, b: Guessed, guesses: readonly Guessed[]): boolean {
  const between = guesses.slice(Math.min(a.place, b.place), Math.max(a.place, b.place) - 1)
  const after = guesses.slice(Math.max(a.place, b.place))
  const valued = (columns: readonly Guessed[]) =>
    columns.some(({ channel, stats }) => channel !== 'time' && !Number.isNaN(stats.least))
  if (a.stats.missing !== b.stats.missing) return false
  if (!valued(between) || !valued(after)) return true
  return isLinear(a.raw.values, b.raw.values)
}

/**
 * Whether one is the other in another unit or from a zero far away, to a hundredth of its span. Stamps that differ by little are those
 * of another clock, whose columns were sampled at other instants.
 */
function isLinear(a: Float64Array, b: Float64Array): boolean {
  const last = a.length - 1
  const places = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((part) => Math.floor((part * last) / 8))
  const [spanA, spanB] = [a[last]! - a[0]!, b[last]! - b[0]!]
  const alike = places.every((place) => Math.abs((a[place]! - a[0]!) / spanA - (b[place]! - b[0]!) / spanB) < 0.01)
  const apart = Math.abs(a[0]! - b[0]!)
  const sameUnit = Math.abs(spanA / spanB - 1) < 0.01
  return alike && (!sameUnit || apart === 0 || apart > Math.abs(spanA))
}

function byColumns(table: Table, values: Guessed[], clocks: Guessed[]): Clocks {
  const faults: LogFault[] = []
  const remarks: LogRemark[] = []
  const groups = clocks.flatMap((time, index): Group[] => {
    const from = index === 0 ? 0 : time.place
    const to = clocks[index + 1]?.place ?? Infinity
    const columns = values.filter(({ place }) => place > from && place < to)
    const clock = unitOf(table, time, columns, remarks)
    if (clock) return [{ clock, stamps: time.raw.values, columns }]
    faults.push({ kind: 'time-unit', column: nameOf(time), step: medianRise(time.raw.values) })
    return []
  })
  return { groups, faults, remarks }
}

/** Stamps since 1970, from 2001 to 2096, by their size. */
const EPOCHS: [unit: string, scale: number][] = [
  ['s', 1],
  ['ms', 1e-3],
  ['µs', 1e-6],
  ['ns', 1e-9],
]
const isEpoch = (stamp: number, scale: number) => stamp * scale > 1e9 && stamp * scale < 4e9

/** Longest step of a log whose stamps have decimals and no unit for which seconds are taken [raw]. */
const SECONDS = 1

function unitOf(table: Table, time: Guessed, columns: readonly Guessed[], remarks: LogRemark[]): Clock | null {
  const { known, choice, stats, raw } = time
  const clock = (scale: number, unit: string, by: Extract<Clock, { kind: 'column' }>['by']): Clock => ({
    kind: 'column',
    column: nameOf(time),
    place: time.place,
    unit,
    scale,
    by,
  })
  const by = choice ? 'person' : 'header'
  if (known && measures(known, 's')) {
    const scale = known.size!.factor * (choice?.scale ?? 1)
    const factor = slopeOf(raw.values, scale, columns)
    if (factor !== null && factor !== 1)
      remarks.push({ kind: 'time-contradicted', said: known.text, factor, taken: false })
    return clock(scale, known.text, by)
  }
  if (raw.stamps) return clock(1, 's', 'header')
  if (choice?.scale !== undefined) return clock(choice.scale, time.unit, 'person')
  const epoch = EPOCHS.find(([, scale]) => isEpoch(stats.least, scale))
  if (epoch && time.unit === '') return clock(epoch[1], epoch[0], 'epoch')
  const step = medianRise(raw.values)
  const ticks = ticksIn(table)?.value ?? null
  if (ticks !== null && (known?.text === 'counts' || /tick|count|clock/i.test(time.header)))
    return clock(1 / ticks, 'ticks', 'clock')
  const period = periodIn(table)
  const unit = period && EPOCHS.find(([, scale]) => Math.abs((step * scale) / period.value - 1) < 0.01)
  if (unit) return clock(unit[1], unit[0], 'preamble')
  const factor = slopeOf(raw.values, 1, columns)
  const sloped = factor !== null && EPOCHS.find(([, scale]) => Math.abs(scale / factor - 1) < 1e-6)
  if (sloped) return clock(sloped[1], sloped[0], 'slope')
  if (Number.isInteger(step) || !(step < SECONDS) || known?.text) return null
  remarks.push({ kind: 'time-assumed', column: nameOf(time), step })
  return clock(1, 's', 'step')
}

function byRate(table: Table, columns: Guessed[], asked: number | undefined): Clocks {
  const group = (clock: Clock): Group => ({ clock, stamps: null, columns })
  if (asked !== undefined)
    return { groups: [group({ kind: 'rate', rate: asked, by: 'person', text: '' })], faults: [], remarks: [] }
  const rate = rateIn(table) ?? confirmed(table, columns)
  if (!rate) {
    return {
      groups: [],
      faults: [{ kind: 'no-time', columns: columns.map(nameOf), period: periodLine(table) }],
      remarks: [],
    }
  }
  const factor = slopeOf(null, table.layout!.thinned / rate.value, columns) ?? 1
  const remarks: LogRemark[] = factor === 1 ? [] : [{ kind: 'time-contradicted', said: rate.text, factor, taken: true }]
  const by = factor === 1 ? 'preamble' : 'slope'
  return { groups: [group({ kind: 'rate', rate: rate.value / factor, by, text: rate.text })], faults: [], remarks }
}

/** A frequency under no name, where the position moves as the speed says at that rate or a power of ten of it. */
function confirmed(table: Table, columns: readonly Guessed[]): Saying | null {
  const found = frequencyIn(table)
  return found && slopeOf(null, table.layout!.thinned / found.value, columns) !== null ? found : null
}
