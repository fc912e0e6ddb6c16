/** How time is told: which column is a clock, in which unit, or at which rate rows follow each other. */
import type { LogFault, LogRemark } from './facts.ts'
import { type Guessed, nameOf } from './guess.ts'
import type { Choices, Clock } from './log.ts'
import { medianRise } from './stats.ts'
import type { Table } from './table.ts'
import { measures, unitsSpelled } from './units.ts'

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
  const ticks = tickRate(table)
  if (ticks !== null && (known?.text === 'counts' || /tick|count|clock/i.test(time.header)))
    return clock(1 / ticks, 'ticks', 'clock')
  const period = said(table, PERIOD, 's') ?? inverse(said(table, RATE, 'Hz'))
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
  const rate = said(table, RATE, 'Hz') ?? inverse(said(table, PERIOD, 's')) ?? confirmed(table, columns)
  if (!rate) {
    const period = (table.layout?.preamble ?? []).find((line) => PERIOD.test(line) || RATE.test(line)) ?? ''
    return {
      groups: [],
      faults: [{ kind: 'no-time', columns: columns.map(nameOf), period: period.trim() }],
      remarks: [],
    }
  }
  const factor = slopeOf(null, table.layout!.thinned / rate.value, columns) ?? 1
  const remarks: LogRemark[] = factor === 1 ? [] : [{ kind: 'time-contradicted', said: rate.text, factor, taken: true }]
  const by = factor === 1 ? 'preamble' : 'slope'
  return { groups: [group({ kind: 'rate', rate: rate.value / factor, by, text: rate.text })], faults: [], remarks }
}

/** Words for the time from row to row, and for rows per time: English, French, German, Italian, Spanish. */
const PERIOD =
  /\b(?:sampl\w* ?(?:period|time|interval|step)|(?:period|interval|step) of sampl\w*|time ?step|time increment|delta ?t|dt|abtast(?:zeit|intervall|periode)|periode d.?echantillonnage|pas de temps|periodo di campionamento|tempo di campionamento|periodo de muestreo|tiempo de muestreo)\b/i
const RATE =
  /\b(?:sampl\w* ?(?:rate|freq\w*)|(?:rate|frequency) of sampl\w*|data ?rate|log\w* rate|fs|abtast(?:rate|frequenz)|frequence d.?echantillonnage|frequenza di campionamento|frecuencia de muestreo)\b/i
const TICKS = /\b(?:clock|timer|tick\w*|takt\w*|horloge|reloj|counter)\b/i

interface Saying {
  value: number
  text: string
}

const inverse = (saying: Saying | null): Saying | null => saying && { ...saying, value: 1 / saying.value }

/** A quantity that the preamble states with its unit [SI]; null: it does not. */
function said({ layout }: Table, words: RegExp, si: string): Saying | null {
  for (const line of layout?.preamble ?? []) {
    const plain = line.normalize('NFD').replaceAll(/\p{M}/gu, '')
    const found = words.exec(plain)
    if (!found) continue
    const value = quantityIn(plain.slice(found.index + found[0].length), si)
    if (value !== null && value > 0) return { value, text: line.trim() }
  }
  return null
}

/** A frequency under no name, where the position moves as the speed says at that rate or a power of ten of it. */
function confirmed(table: Table, columns: readonly Guessed[]): Saying | null {
  const found = said(table, /(?=(?<![\w.,])\d+(?:[.,]\d+)?\s*[kM]?Hz\b)/, 'Hz')
  return found && slopeOf(null, table.layout!.thinned / found.value, columns) !== null ? found : null
}

/** `[ms]:;4.000`, `: 4.000 ms`, `= 8kHz` */
function quantityIn(text: string, si: string): number | null {
  const [, before, figure, behind] =
    /^[^\d\w]*([a-zµμ]*)[^\d\w-]*([\d.,]+(?:e[+-]?\d+)?)[\s;,"]*([\p{L}µμ]*)/iu.exec(text) ?? []
  const unit = [behind, before]
    .flatMap((each) => unitsSpelled(each ?? ''))
    .find((each) => measures(each, si === 'Hz' ? '1/s' : si))
  const value = Number(figure?.replace(/[.,]$/, '').replace(',', '.'))
  return unit?.size && Number.isFinite(value) ? value * unit.size.factor : null
}

/** Ticks a second of a clock that the preamble names; null: it names none. */
const tickRate = (table: Table): number | null => said(table, TICKS, 'Hz')?.value ?? null

interface Motion {
  position: Float64Array
  /** Per metre and metre a second. */
  ratio: number
  speed: Float64Array
}

/** Position and speed in units of known size, or both in turns. */
function motionOf(columns: readonly Guessed[]): Motion | null {
  const position = columns.find(({ channel }) => channel === 'travel')
  const speed = columns.find(({ channel }) => channel === 'speed')
  if (!position?.known || !speed?.known) return null
  const sized = position.known.size && speed.known.size && speed.known.size.factor / position.known.size.factor
  const turned = position.known.turns && speed.known.turns && speed.known.turns / position.known.turns
  const ratio = (sized ?? turned ?? 0) * ((speed.choice?.scale ?? 1) / (position.choice?.scale ?? 1))
  return ratio === 0 ? null : { position: position.raw.values, speed: speed.raw.values, ratio }
}

/** Stretches over which ways are compared. */
const STRETCHES = 40
/** How near to a power of ten the slope must lie. */
const NEAR = 0.25

/**
 * By which power of ten times must be multiplied so that the position moves as the speed says: 1 where it does so already, null where
 * the two do not tell. `stamps` null: a row each. Least squares over ways of many rows, so that noise and lags of the speed count little.
 */
function slopeOf(stamps: Float64Array | null, scale: number, columns: readonly Guessed[]): number | null {
  const motion = motionOf(columns)
  if (!motion) return null
  const { position, speed, ratio } = motion
  const time = (row: number) => (stamps ? stamps[row]! : row) * scale
  let [both, own] = [0, 0]
  for (let stretch = 0; stretch < STRETCHES; stretch++) {
    const from = Math.floor((stretch * (position.length - 1)) / STRETCHES)
    const to = Math.floor(((stretch + 1) * (position.length - 1)) / STRETCHES)
    let way = 0
    for (let row = from + 1; row <= to; row++) {
      const step = time(row) - time(row - 1)
      way += step >= 0 ? step * (speed[row]! + speed[row - 1]!) * 0.5 * ratio : Number.NaN
    }
    const moved = position[to]! - position[from]!
    if (!Number.isFinite(way * moved)) continue
    both += moved * way
    own += way * way
  }
  const slope = Math.abs(both / own)
  const power = 10 ** Math.round(Math.log10(slope))
  return Number.isFinite(slope) && slope > 0 && Math.abs(slope / power - 1) < NEAR ? power : null
}
