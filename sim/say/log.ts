/** What is said of a log that was read. */
import { channelLabel, channelName } from '../log/read/channels.ts'
import type { LogFault, LogRemark, SkipReason } from '../log/read/facts.ts'
import type { Clock, Column, Layout } from '../log/read/log.ts'
import { grouped } from './spread.ts'
import { figure, type Wording } from './wording.ts'

const quoted = (text: string) => `“${text}”`
const listed = (texts: readonly string[]) => texts.map(quoted).join(', ')
const rows = (count: number) => `${grouped(count)} ${count === 1 ? 'row' : 'rows'}`

/** Why a column was taken for what it is. */
export function columnReason({ reason, unit, channel }: Pick<Column, 'reason' | 'unit' | 'channel'>): string {
  switch (reason.kind) {
    case 'person':
      return 'as you say'
    case 'trace':
      return 'a trace of the simulator'
    case 'stamps':
      return 'times of the day'
    case 'name':
      return `named ${reason.word}${unit === '' ? '' : reason.unfit ? `, though ${unit} measures something else` : `, unit ${unit}`}`
    case 'unit':
      return `unit ${unit}`
    case 'follows':
      return `a set-point that lies where ${quoted(reason.column)} lies`
    case 'other':
      return `${quoted(reason.column)} was taken for ${channelLabel(reason.channel)}`
    case 'empty':
      return 'holds no figure'
    case 'text':
      return channel === null ? 'holds words' : 'words'
    case 'counts':
      return `figure by figure ${quoted(reason.column)}, which is in counts`
    case 'not':
      return `named ${reason.word}`
    case 'no-clock':
      return 'named a time, but it does not rise from row to row'
    case 'rate':
      return 'not needed, since a rate was given'
    case 'second-clock':
      return `another clock beside ${quoted(reason.column)}`
    case 'unknown':
      return 'neither name nor unit tell'
  }
}

/** Why lines were left out. */
export function skipText(why: SkipReason): string {
  switch (why.kind) {
    case 'text':
      return `text: ${quoted(why.text)}`
    case 'comment':
      return `comment: ${quoted(why.text)}`
    case 'end':
      return `a mark of the end: ${quoted(why.text)}`
    case 'header':
      return 'the header again'
    case 'note':
      return `${quoted(why.text)} in column ${quoted(why.column)} is no figure`
    case 'fields':
      return `${why.given} fields where there are ${why.wanted} columns`
    case 'cut':
      return 'it breaks off in mid-row'
    case 'no-time':
      return 'no time'
    case 'repeated':
      return 'the time of the row before'
    case 'standing':
      return 'time stands still, as in padding'
    case 'short':
      return `${rows(why.rows)} only, before time begins anew`
  }
}

/** Who is told what to do: somebody who writes commands, or who sees the columns before him. */
export type Told = 'command' | 'page'

/** How the log can be told its time. */
const ASK_TIME: Record<Told, string> = {
  command: 'Give --rate HZ, the rows per second, or name the column, as in --column time=#1:ms.',
  page: 'Give the rows per second, or say which column is the time, and its unit.',
}

/** Why a log is refused, and what to do. */
export function logFaultText(fault: LogFault, told: Told = 'command'): string {
  switch (fault.kind) {
    case 'empty':
      return 'It is empty.'
    case 'not-text':
      return `It is no text but ${fault.is}, whatever its name says. Save the log as CSV.`
    case 'long-line':
      return 'It is no table: more than a million bytes without a line end.'
    case 'no-numbers':
      return 'It holds no rows of numbers.'
    case 'no-rows':
      return 'No recording in it has three rows or more.'
    case 'no-time':
      return `No column is a time${fault.period === '' ? '' : `, and ${quoted(fault.period)} gives none with a unit`}. ${ASK_TIME[told]} Its columns: ${listed(fault.columns)}.`
    case 'time-unit':
      return `The time in ${quoted(fault.column)} has no unit, and its steps of ${figure(fault.step)} may be anything. ${told === 'page' ? 'Say which unit it is in.' : `Say it, as in --column "time=${fault.column}:ms".`}`
    case 'backwards':
      return `Time runs backwards within a recording, in line ${fault.line}: ${figure(fault.to)} after ${fault.from}.`
    case 'no-column':
      return `There is no column ${quoted(fault.header)}. There are ${listed(fault.columns)}, or #1 to #${fault.columns.length}.`
    case 'two-columns':
      return `Several columns are called ${quoted(fault.header)}: say ${fault.places.map((place) => `#${place}`).join(' or ')}.`
    case 'two-for-one':
      return `${listed(fault.headers)} cannot all be ${channelLabel(fault.channel)}: say which one is.`
    case 'asked-twice':
      return `Column ${quoted(fault.header)} is named twice.`
    case 'constant':
      return `Column ${quoted(fault.header)} never changes from ${figure(fault.value)}, so that it tells nothing of ${channelLabel(fault.channel)}.`
    case 'wordy':
      return `Column ${quoted(fault.header)} holds words, so that it cannot be ${channelLabel(fault.channel)}.`
    case 'valueless':
      return `Column ${quoted(fault.header)} holds no figure, so that it cannot be ${channelLabel(fault.channel)}.`
    case 'unit':
      return `The unit ${quoted(fault.unit)} of column ${quoted(fault.header)} is not known.`
  }
}

/** What a person should know before building on the log. */
export function logRemarkText(remark: LogRemark, words: Wording, told: Told = 'command'): string {
  const page = told === 'page'
  switch (remark.kind) {
    case 'time-assumed':
      return `${quoted(remark.column)} names no unit: seconds were taken, so that a row follows each ${words.time(remark.step)}. ${page ? 'Another one can be set at its column.' : 'Another one is said with --column.'}`
    case 'time-contradicted':
      return remark.taken
        ? `${quoted(remark.said)} does not go with the rows: the position moves ${figure(remark.factor)} times the way that the speed makes in that time, so the time was multiplied by ${figure(remark.factor)}.`
        : `The position moves ${figure(remark.factor)} times the way that the speed makes: the unit of time, ${remark.said}, or that of one of the two is wrong. Nothing was changed.`
    case 'misnamed':
      return `${remark.names} names stand above ${remark.columns} columns of numbers, so that none was used: columns go by #1 to #${remark.columns}. Decimal commas between commas look like that.`
    case 'thinned':
      return `The log is enormous: every ${remark.every}th row was kept, and what is said holds for those. ${page ? 'A part of it, cut out into a file of its own, is read whole.' : '--lines FROM:TO reads a part of it whole.'}`
    case 'repeated':
      return `${rows(remark.rows)} of ${grouped(remark.of)} repeat the time of the row before and were left out: the stamps are coarser than the rows. ${page ? 'The rows per second, where they are known, do without them.' : '--rate HZ does without them.'}`
    case 'limit-of-bits':
      return `${quoted(remark.column)} sits at ${remark.value}, a limit of 16 bits, in ${rows(remark.rows)}: it may be clipped.`
    case 'at-limit':
      return `${quoted(remark.column)} sits at ${figure(remark.value)} in ${words.ratio(remark.share)} of the rows: a limit of the drive, as it seems. What the axis does there is not told by it.`
    case 'unlike':
      return remark.ratio < 0
        ? `${quoted(remark.position)} moves against the sign of ${quoted(remark.speed)}, ${figure(-remark.ratio)} times its way: turn ${page ? 'the sign of one of them' : 'one of them with *-1'}.`
        : `${quoted(remark.position)} moves ${figure(remark.ratio)} times the way that ${quoted(remark.speed)} makes: one of their scales is off, or the time.`
    case 'lags':
      return `${quoted(remark.speed)} comes ${words.shortTime(remark.lag)} after the derivative of ${quoted(remark.position)}: it is filtered, and a mass that is fitted to it would be too small.`
    case 'coarse':
      return `${quoted(remark.column)} is coarse: ${remark.steps} steps of its resolution from end to end.`
    case 'same':
      return `${quoted(remark.column)} is figure by figure ${quoted(remark.other)}.`
    case 'unknown-scale':
      return `${quoted(remark.column)} is ${channelLabel(remark.channel)} of unknown scale${remark.unit === '' ? ', without a unit' : `, in ${remark.unit}`}: its figures are as read until you say what one is${page ? '' : `, as in --column "${channelName(remark.channel)}=${remark.column}${remark.unit === '' ? ':UNIT' : '*SCALE'}"`}.`
    case 'still':
      return 'Nothing moves in this log. To learn anything of the axis, record moves to and fro at two speeds or more, with some force or current beside the position.'
    case 'interpolated':
      return `${listed(remark.columns)} have a clock of their own, ${quoted(remark.clock)}: their values were interpolated onto the other.`
    case 'constant':
      return `${quoted(remark.column)} never changes.`
  }
}

const OF_TIME = ['s', 'ms', 'µs', 'ns', 'min', 'h']

/** How time is told. */
export function clockText(clock: Clock, words: Wording): string {
  if (clock.kind === 'rate') {
    const by = {
      person: 'as you say',
      preamble: `by ${quoted(clock.text)}`,
      slope: `by ${quoted(clock.text)} and the slope of the position`,
    }
    return `no column: rows at ${words.of({ unit: 'Hz' }, clock.rate)}, ${by[clock.by]}`
  }
  const by = {
    header: 'as it says',
    person: 'as you say',
    preamble: 'since the lines above give that period',
    epoch: 'since 1970, by the size of its figures',
    step: 'for want of a unit',
    clock: 'by the clock that the lines above name',
    slope: 'by the slope of the position against the speed',
  }
  const unit = OF_TIME.includes(clock.unit)
    ? clock.unit
    : `${clock.unit || 'units'} of ${words.of({ unit: 's' }, clock.scale)}`
  return `column ${quoted(clock.column)} in ${unit}, ${by[clock.by]}`
}

const SEPARATORS: Record<Layout['separator'], string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  blanks: 'blanks',
  pairs: 'names before the values',
}

/** How the text is laid out. */
export function layoutText({ encoding, separator, decimal, namesLine, unitsLine, dataLine, preamble }: Layout): string {
  const names = namesLine > 0 ? `names in line ${namesLine}` : 'no names'
  const units = unitsLine > 0 ? `, units in line ${unitsLine}` : ''
  const before = preamble.length > 0 ? `, numbers from line ${dataLine}` : ''
  return `${encoding}, ${SEPARATORS[separator]}, decimal ${decimal === ',' ? 'comma' : 'point'}, ${names}${units}${before}`
}
