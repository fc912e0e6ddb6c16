/** What each column holds, by what a person says, by its name and its unit. Every guess has its reason. */
import { type Channel, channelUnits, TRACE_LABELS } from './channels.ts'
import type { LogFault, Reason } from './facts.ts'
import { splitHeading } from './header.ts'
import type { Choices, ColumnChoice } from './log.ts'
import { CHANNELS_OF, type Measured, type Named, readName } from './names.ts'
import type { Stats } from './stats.ts'
import type { TableColumn } from './table.ts'
import { measures, type Unit, unitsSpelled } from './units.ts'

/** A column while it is being understood. */
export interface Guessed {
  place: number
  header: string
  raw: TableColumn
  stats: Stats
  channel: Channel | 'time' | null
  reason: Reason
  /** As read. */
  unit: string
  known: Unit | null
  choice: ColumnChoice | null
  /** The output of the axis turns: its ways are angles, its efforts torques. */
  turning: boolean
}

interface Heading {
  name: string
  unit: string
}

/** Whether a unit can stand for a quantity: in its own dimension, or where only the scale is missing. */
export function suits(unit: Unit, measured: Measured): boolean {
  if (unit.text === '') return false
  const bare = unit.size === null && unit.turns === null
  const rate = unit.text.endsWith('/s')
  switch (measured) {
    case 'time':
      return measures(unit, 's') || unit.text === 'counts'
    case 'position':
      return measures(unit, 'm') || (unit.turns !== null && !unit.rate) || unit.text === 'counts'
    case 'speed':
      return measures(unit, 'm/s') || (unit.turns !== null && unit.rate) || (bare && rate)
    case 'force':
      return measures(unit, 'N') || (bare && !rate)
    case 'current':
      return measures(unit, 'A') || (bare && !rate)
    case 'torque':
      return measures(unit, 'N·m') || (bare && !rate)
    case 'voltage':
      return measures(unit, 'V') || (bare && !rate)
    case 'temperature':
      return measures(unit, 'K')
    default:
      return false
  }
}

const QUANTITIES: Measured[] = ['time', 'position', 'speed', 'force', 'current', 'torque', 'voltage', 'temperature']

/** Whether a unit is so plainly meant by the end of a name: it suits the rest of it, or nothing else is known of that. */
function isSuffix(name: string, unit: string): boolean {
  const units = unitsSpelled(unit).filter(({ text, turns }) => text !== '' && !(unit.length === 1 && turns !== null))
  const { measured, maybe } = readName(name)
  const possible = measured === 'none' || measured === null ? maybe : [measured]
  if (possible.length > 0) return units.some((each) => possible.some((quantity) => suits(each, quantity)))
  return unit.length > 1 && units.some(({ size, turns }) => size !== null || turns !== null)
}

export function headingOf({ name, unit }: { name: string; unit: string }): Heading {
  // A column that is called by the unit of time alone.
  if (unit === '' && unitsSpelled(name).some((each) => measures(each, 's')) && name.length > 1)
    return { name, unit: name }
  return unit === '' ? splitHeading(name, isSuffix) : { name: name.trim(), unit }
}

/** What a name says under its unit. */
interface Said {
  measured: Measured | null
  wanted: boolean
  score: number
  reason: Reason
}

const UNIT_ALONE: Measured[] = ['position', 'speed', 'force', 'current', 'torque']

function saidBy(named: Named, units: readonly Unit[], unit: string, isNameless: boolean): Said {
  const { measured, wanted, word } = named
  const none: Said = { measured: null, wanted, score: 0, reason: { kind: 'unknown' } }
  if (measured === 'none') return { ...none, reason: { kind: 'not', word } }
  const possible = measured ? [measured] : named.maybe
  const fitting = possible.find((each) => units.some((one) => suits(one, each)))
  const taken = fitting ?? measured ?? (named.default && unit === '' ? possible[0] : undefined)
  if (taken) {
    const unfit = unit !== '' && !fitting && !['recording', 'flag'].includes(taken)
    const score =
      (measured ? 4 : 3) + (fitting ? 2 : 0) - (unfit ? 1 : 0) + (named.actual ? 1 : 0) - (named.motor ? 0.5 : 0)
    return { measured: taken, wanted, score, reason: { kind: 'name', word, unfit } }
  }
  if (isNameless && units.some((one) => measures(one, 's')))
    return { measured: 'time', wanted: false, score: 2, reason: { kind: 'unit' } }
  const byUnit = (wanted ? [...UNIT_ALONE, 'voltage' as const] : UNIT_ALONE).find((each) =>
    units.some((one) => suits(one, each) && (one.size !== null || one.turns !== null)),
  )
  if (byUnit)
    return {
      measured: byUnit,
      wanted,
      score: 2,
      reason: wanted ? { kind: 'name', word, unfit: false } : { kind: 'unit' },
    }
  return none
}

function channelSaid({ measured, wanted }: Said, named: Named): Channel | 'time' | null {
  if (measured) return CHANNELS_OF[measured][wanted ? 1 : 0]
  return wanted && named.commanded && named.measured === null ? 'command' : null
}

interface Candidate {
  guess: Guessed
  named: Named
  channel: Channel | 'time' | null
  score: number
}

/** Every column with its unit and its channel, `places` being those in the file; a channel is held by one column, `time` by several. */
export function guessColumns(
  raws: readonly TableColumn[],
  stats: readonly Stats[],
  choices: readonly ColumnChoice[],
  turning = false,
  places: readonly number[] = raws.map((_, index) => index + 1),
): Guessed[] {
  const headings = raws.map(headingOf)
  const trace = isTrace(headings)
  const candidates = raws.map((raw, index): Candidate => {
    const [heading, place] = [headings[index]!, places[index]!]
    const choice = choices.find((each) => isMeant(each, place, raw, heading)) ?? null
    return candidateOf({ raw, stats: stats[index]!, place, heading, choice, trace, turning })
  })
  assign(candidates)
  motorSide(candidates)
  for (const { guess } of candidates)
    if (guess.channel === null && guess.reason.kind === 'unknown') followed(guess, candidates)
  return candidates.map(({ guess }) => guess)
}

/** A trace of the simulator names its columns as nobody else does. */
const isTrace = (headings: readonly Heading[]) =>
  headings.length > 5 && headings.every(({ name }) => TRACE_LABELS.has(name.toLowerCase()))

export const isMeant = ({ header }: ColumnChoice, place: number, raw: { name: string }, heading: Heading): boolean =>
  header === `#${place}` || header === raw.name || (heading.name !== '' && header === heading.name)

interface Given {
  raw: TableColumn
  stats: Stats
  place: number
  heading: Heading
  choice: ColumnChoice | null
  trace: boolean
  turning: boolean
}

function candidateOf({ raw, stats, place, heading, choice, trace, turning }: Given): Candidate {
  const named = readName(heading.name)
  const unit = choice?.unit ?? heading.unit
  const units = unitsSpelled(unit)
  const said = saidBy(named, units, unit, heading.name === '')
  const known = bestUnit(units, said.measured)
  const guess: Guessed = {
    place,
    header: heading.name,
    raw,
    stats,
    channel: null,
    reason: said.reason,
    unit,
    known,
    choice,
    turning,
  }
  if (choice) {
    guess.channel = choice.channel
    guess.reason = { kind: 'person' }
    guess.known =
      units.find((each) => choice.channel && channelUnits(choice.channel, turning).some((si) => measures(each, si))) ??
      known
    return { guess, named, channel: choice.channel, score: Infinity }
  }
  if (Number.isNaN(stats.least)) {
    guess.reason = { kind: raw.wordy ? 'text' : 'empty' }
    return { guess, named, channel: null, score: 0 }
  }
  if (raw.stamps) {
    guess.reason = { kind: 'stamps' }
    return { guess, named, channel: 'time', score: 10 }
  }
  if (trace) {
    guess.reason = { kind: 'trace' }
    return { guess, named, channel: TRACE_LABELS.get(heading.name.toLowerCase()) ?? null, score: 10 }
  }
  if (said.reason.kind === 'unknown' && channelSaid(said, named))
    guess.reason = { kind: 'name', word: named.word, unfit: false }
  const channel =
    raw.wordy && said.measured !== 'recording' ? (said.measured === 'flag' ? 'flag' : null) : channelSaid(said, named)
  if (raw.wordy && channel === null) guess.reason = { kind: 'text' }
  return { guess, named, channel, score: said.score - (stats.least === stats.most ? 2 : 0) }
}

const bestUnit = (units: readonly Unit[], measured: Measured | null): Unit | null =>
  units.find((each) => measured && suits(each, measured)) ??
  units.find((each) => QUANTITIES.some((quantity) => suits(each, quantity))) ??
  units[0] ??
  null

/** The best column of each channel takes it; the others say which one that is. */
function assign(candidates: readonly Candidate[]): void {
  const best = new Map<Channel, Candidate>()
  for (const candidate of candidates) {
    const { channel, score } = candidate
    if (channel === null || channel === 'time') continue
    if (score > (best.get(channel)?.score ?? -Infinity)) best.set(channel, candidate)
  }
  for (const candidate of candidates) {
    const { guess, channel } = candidate
    if (channel === null || guess.choice) continue
    const taken = channel === 'time' ? candidate : best.get(channel)!
    if (taken === candidate) guess.channel = channel
    else guess.reason = { kind: 'other', channel, column: nameOf(taken.guess) }
  }
}

/** What a person calls a column. */
export const nameOf = ({ header, place }: { header: string; place: number }): string => header || `#${place}`

/** Where another column is the position, that of the motor is one of its own. */
function motorSide(candidates: readonly Candidate[]): void {
  const held = candidates.some(({ guess }) => guess.channel === 'motorTravel')
  const motor = candidates.find(
    ({ guess, named }) => named.motor && guess.reason.kind === 'other' && guess.reason.channel === 'travel',
  )
  if (!motor || held) return
  motor.guess.channel = 'motorTravel'
  motor.guess.reason = { kind: 'name', word: motor.named.word, unfit: false }
}

/** A set-point that does not say of what lies where the measured one lies; so does no other. */
function followed(guess: Guessed, candidates: readonly Candidate[]): void {
  const own = candidates.find((candidate) => candidate.guess === guess)!
  const position = candidates.find((candidate) => candidate.guess.channel === 'travel')?.guess
  const held = candidates.some((candidate) => candidate.guess.channel === 'target')
  if (!own.named.wanted || held || !position || guess.unit !== '' || guess.raw.wordy) return
  const span = (stats: Stats) => stats.most - stats.least
  const shared = Math.min(guess.stats.most, position.stats.most) - Math.max(guess.stats.least, position.stats.least)
  if (!(shared > 0.8 * Math.max(span(guess.stats), span(position.stats)))) return
  guess.channel = 'target'
  guess.reason = { kind: 'follows', column: nameOf(position) }
  guess.known = position.known
  guess.unit = position.unit
}

/** Faults in what a person said of columns. */
export function choiceFaults({ columns = [] }: Choices, raws: readonly TableColumn[]): LogFault[] {
  const headings = raws.map(headingOf)
  const places = columns.map((choice) =>
    raws.flatMap((raw, place) => (isMeant(choice, place + 1, raw, headings[place]!) ? [place + 1] : [])),
  )
  const names = raws.map((_, place) => nameOf({ header: headings[place]!.name, place: place + 1 }))
  const faults = columns.flatMap(({ header, unit }, index): LogFault[] => {
    const found = places[index]!
    if (found.length === 0) return [{ kind: 'no-column', header, columns: names }]
    if (found.length > 1) return [{ kind: 'two-columns', header, places: found }]
    if (places.findIndex((other) => other[0] === found[0]) < index) return [{ kind: 'asked-twice', header }]
    return unit && unitsSpelled(unit).length === 0 ? [{ kind: 'unit', unit, header }] : []
  })
  const channels = columns.flatMap(({ channel }) => (channel ? [channel] : []))
  const doubled = [...new Set(channels.filter((channel, index) => channels.indexOf(channel) < index))]
  return [
    ...faults,
    ...doubled.map((channel): LogFault => {
      const headers = columns.filter((each) => each.channel === channel).map(({ header }) => header)
      return { kind: 'two-for-one', channel, headers }
    }),
  ]
}
