import { channelLabel } from '../log/read/channels.ts'
import type { Clock, Column, Log, Recording } from '../log/read/log.ts'
import { inPlainSpaces, NO_FIGURE } from '../say/figure.ts'
import { clockText, columnReason, layoutText, logRemarkText, skipText } from '../say/log.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, figureText, isJson, optionsOf, Refused } from './command.ts'
import { LOG_OPTIONS, LOG_USAGE, usableLog } from './log-input.ts'
import { print, printJson } from './output.ts'

export const log: Command = {
  id: 'log',
  takes: `LOG.csv ${LOG_USAGE} [--format table|json]`,
  does: 'how a measured log is understood: recordings, columns, what was left out and why',
  async run(args) {
    const known = { ...LOG_OPTIONS, format: { type: 'string', default: 'table' } } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const json = isJson(values.format)
    const [file] = positionals
    if (file === undefined) throw new Refused(['no log was named'], true)
    const read = await usableLog(file, values)
    if (json) printJson(report(read))
    else print(inPlainSpaces(table(read)))
    return 0
  },
}

const WORDS = wordingOf('si')

function report({ recordings, skipped, skippedMore, remarks, layout, clock }: Log) {
  return {
    format: 'jawbench-log',
    version: 1,
    layout,
    time: clock && { ...clock, said: inPlainSpaces(clockText(clock, WORDS)) },
    recordings: recordings.map(({ time: _, values: __, clock: own, columns, ...recording }) => ({
      ...recording,
      columns: [
        ...timeColumn(own, recording),
        ...columns.map((column) => ({ ...column, reason: columnReason(column) })),
      ],
    })),
    skipped: skipped.map(({ row, lastRow, why }) => ({ row, lastRow, why: inPlainSpaces(skipText(why)) })),
    skippedMore,
    remarks: remarks.map((remark) => inPlainSpaces(logRemarkText(remark, WORDS))),
  }
}

/** The column that is the recording's clock, as the others are told. */
function timeColumn(clock: Clock, { from, to }: Pick<Recording, 'from' | 'to'>) {
  if (clock.kind !== 'column') return []
  const { column, place, unit, scale } = clock
  const reason = inPlainSpaces(clockText(clock, WORDS))
  return [{ header: column, place, channel: 'time', reason, unit, si: 's', scale, offset: 0, least: from, most: to }]
}

/** Recordings, and skipped lines, that a table lists. */
const LISTED = 20

function table(read: Log): string {
  const { layout, clock, recordings, remarks, skipped, skippedMore } = read
  const more = skipped.slice(LISTED).reduce((sum, { row, lastRow }) => sum + lastRow - row + 1, skippedMore)
  return [
    layout ? layoutText(layout) : '',
    `time: ${clock ? clockText(clock, WORDS) : NO_FIGURE}`,
    ...recordings
      .slice(0, LISTED)
      .flatMap((recording, index) => ['', heading(recording, index), ...columnLines(recording)]),
    ...(recordings.length > LISTED ? ['', `and ${recordings.length - LISTED} recordings more`] : []),
    ...(remarks.length > 0 ? ['', ...remarks.map((remark) => logRemarkText(remark, WORDS))] : []),
    ...(skipped.length > 0 ? ['', 'left out:'] : []),
    ...skipped.slice(0, LISTED).map(({ row, lastRow, why }) => `  ${linesText(row, lastRow)}: ${skipText(why)}`),
    ...(more > 0 ? [`  and ${more} lines more`] : []),
  ].join('\n')
}

const linesText = (from: number, to: number) => (from === to ? `line ${from}` : `lines ${from} to ${to}`)

function heading(
  { rows, line, lastLine, from, to, step, jitter, gaps, longest, repeated }: Recording,
  index: number,
): string {
  const lines = `recording ${index + 1}: ${rows} rows, lines ${line} to ${lastLine}, ${figureText(from, 9)} s to ${figureText(to, 9)} s`
  const gap = gaps > 0 ? `, ${gaps} gaps, the longest ${figureText(longest)} s` : ''
  return `${lines}, step ${figureText(step, 6)} s, jitter ${figureText(jitter, 2)} s${gap}${repeated > 0 ? `, ${repeated} repeated` : ''}`
}

function columnLines({ columns }: Recording): string[] {
  const cells = columns.map((column) => [
    column.header || `#${column.place}`,
    column.channel ? channelLabel(column.channel) : NO_FIGURE,
    rangeOf(column),
    columnReason(column),
  ])
  const widths = [0, 1, 2].map((place) => Math.max(...cells.map((row) => row[place]!.length)))
  return cells.map((row) => `  ${row.map((cell, place) => cell.padEnd(widths[place] ?? 0)).join('  ')}`.trimEnd())
}

function rangeOf({ least, most, si, scale, unit, words }: Column): string {
  if (words) return words.join(', ')
  if (Number.isNaN(least)) return NO_FIGURE
  const range = `${figureText(least)} to ${figureText(most)}`
  if (scale === null) return `${range} ${unit === '' ? 'of unknown unit' : unit}`
  return `${range} ${si}`.trimEnd()
}
