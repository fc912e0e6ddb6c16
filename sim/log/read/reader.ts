/**
 * Reads a log piece by piece, wherever its bytes come from: a file of the page, a stream of the command line. Nothing of the text is
 * kept beyond its first part, from which the layout is told, and the line that is under way.
 */
import { Decoder } from './decode.ts'
import type { LogFault, SkipReason } from './facts.ts'
import { fieldsOf, pairsOf } from './fields.ts'
import { figureOf, isMissing } from './figures.ts'
import { headingOf } from './guess.ts'
import { isComment } from './header.ts'
import { type Marks, quickRow } from './quick.ts'
import { type Rec, Records } from './records.ts'
import { digitsOf, type Sniffed, sniff } from './sniff.ts'
import { MOST_FIGURES, Rows, Skips, type Table } from './table.ts'

export interface ReadOptions {
  /** First and last line of the file that are read; the lines of names and units are read in any case. */
  lines?: { from: number; to: number }
  /** Most figures that are kept, see `MOST_FIGURES`. */
  mostFigures?: number
}

/** Letters from which the layout is told. */
const HEAD = 1 << 18
/** Letters of a line that are shown. */
const SHOWN = 60

/** A line without anything but separators, as spreadsheets leave for a blank one. */
const EMPTY = /^[\s,;|]*$/

const END = /^\W*(?:eof|end|ende|fin|fine|end of (?:file|data)|stop)\W*$/i

export class LogReader {
  private readonly options: ReadOptions
  private readonly decoder = new Decoder()
  private readonly records: Records
  private head: Rec[] | null = []
  private headLetters = 0
  private sniffed: Sniffed | null = null
  private rows = new Rows(0)
  private readonly skips = new Skips()
  private fault: LogFault | null = null
  private bytes = 0
  /** Fields of the row before. */
  private widthBefore = 0
  /** Figures of the row that is under way. */
  private figures = new Float64Array(0)
  /** Codes of separator and decimal mark where rows may be plain, see `quickRow`. */
  private plain: Marks | null = null

  constructor(options: ReadOptions = {}) {
    this.options = options
    this.records = new Records(
      (record) => this.take(record),
      (text, from, to, line) => this.quickly(text, from, to, line),
    )
  }

  /** The next bytes of the file; false: no more are wanted, since this is no log. */
  push(bytes: Uint8Array): boolean {
    this.bytes += bytes.length
    if (!this.fault) this.records.push(this.decoder.push(bytes))
    this.judge()
    return this.fault === null
  }

  finish(): Table {
    if (!this.fault) {
      this.records.push(this.decoder.end())
      this.judge()
      this.records.end()
      if (this.head) this.begin()
    }
    const { sniffed, rows } = this
    const fault = this.fault ?? this.missing()
    return {
      fault,
      layout: sniffed && { ...sniffed.layout, encoding: this.decoder.encoding, thinned: rows.every },
      columns: (sniffed?.columns ?? []).map((column, place) => ({
        ...column,
        values: rows.values[place]!.subarray(0, rows.rows),
        words: rows.words[place]!,
      })),
      rows: rows.rows,
      lines: rows.lines.subarray(0, rows.rows),
      breaks: rows.breaks,
      gaps: rows.gaps,
      skipped: this.skips.list,
      skippedMore: this.skips.more,
      misnamed: sniffed?.misnamed ?? 0,
    }
  }

  private judge(): void {
    if (this.decoder.foreign !== '') this.fault = { kind: 'not-text', is: this.decoder.foreign }
    else if (this.decoder.endless) this.fault = { kind: 'long-line' }
  }

  private missing(): LogFault | null {
    if (this.bytes === 0) return { kind: 'empty' }
    if (!this.sniffed) return { kind: 'no-numbers' }
    return this.rows.rows === 0 ? { kind: 'no-rows' } : null
  }

  private take(record: Rec): void {
    if (!this.head) {
      this.row(record)
      return
    }
    this.head.push(record)
    this.headLetters += record.text.length + 1
    if (this.headLetters >= HEAD) this.begin()
  }

  /** Tells the layout and reads what has waited for it. */
  private begin(): void {
    const head = this.head ?? []
    this.head = null
    this.sniffed = sniff(head, this.decoder.encoding)
    if (!this.sniffed) {
      if (this.headLetters >= HEAD) this.fault = { kind: 'no-numbers' }
      return
    }
    this.rows = new Rows(this.sniffed.columns.length, this.options.mostFigures ?? MOST_FIGURES)
    this.figures = new Float64Array(this.sniffed.columns.length)
    this.plain = plainOf(this.sniffed)
    for (const record of head.slice(this.sniffed.start)) this.row(record)
  }

  private row(record: Rec): void {
    const { sniffed } = this
    if (!sniffed) return
    const { text, line } = record
    const { lines } = this.options
    if (lines && (line < lines.from || line > lines.to)) return
    if (EMPTY.test(text)) this.rows.part(false)
    else if (isComment(text)) this.leave(record, 'comment', false)
    else if (sniffed.layout.separator === 'pairs' && !pairsOf(text)) this.leave(record, 'text', true)
    else this.read(record, fieldsOf(text, sniffed.layout.separator), sniffed)
  }

  /** Whether the line that stands there is a plain row, which is kept then. */
  private quickly(text: string, from: number, to: number, line: number): boolean {
    const { sniffed, plain, figures } = this
    const { lines } = this.options
    if (!sniffed || !plain || (lines && (line < lines.from || line > lines.to))) return false
    figures.fill(Number.NaN)
    const width = quickRow(text, from, to, plain, figures)
    if (width < sniffed.least || figures.every(Number.isNaN)) return false
    this.widthBefore = width
    this.keep(line)
    return true
  }

  private leave({ text, line }: Rec, kind: 'text' | 'comment', hard: boolean): void {
    this.skips.add(line, END.test(text) ? { kind: 'end', text: shown(text) } : { kind, text: shown(text) })
    this.rows.part(hard)
  }

  private read(record: Rec, fields: string[], sniffed: Sniffed): void {
    const sort = this.sort(fields, sniffed.columns)
    const before = this.widthBefore
    this.widthBefore = fields.length
    if (sort.numbers === 0 && !sniffed.columns.every(({ wordy }) => wordy)) this.words(record, sniffed.header)
    else {
      const why = whyNot(record, fields, sort, before, sniffed)
      if (why) this.skips.add(record.line, why)
      else this.keep(record.line)
    }
  }

  private sort(fields: string[], columns: Sniffed['columns']): Sorted {
    const sort: Sorted = { numbers: 0, note: -1, width: 0 }
    const figures = this.figures.fill(Number.NaN)
    for (let place = 0; place < fields.length; place++) {
      const field = fields[place]!
      const column = columns[place]
      const wordy = column?.wordy === true
      const figure = wordy ? Number.NaN : figureOf(field, column?.decimal ?? '.')
      if (!Number.isNaN(figure)) {
        sort.numbers++
        if (column) figures[place] = figure
      } else if (field === '' || isMissing(field)) {
        if (field.trim() === '') continue
        sort.numbers++
      } else if (wordy) figures[place] = this.rows.wordAt(place, field.trim())
      else if (sort.note < 0) sort.note = place
      sort.width = place + 1
    }
    return sort
  }

  /** A line without a figure. */
  private words(record: Rec, header: string): void {
    if (header !== '' && record.text.trim() === header.trim()) {
      this.skips.add(record.line, { kind: 'header' })
      this.rows.part(true)
    } else this.leave(record, 'text', true)
  }

  private keep(line: number): void {
    const row = this.rows.place(line)
    if (row < 0) return
    const { values } = this.rows
    for (let place = 0; place < values.length; place++) values[place]![row] = this.figures[place]!
  }
}

/** Rows can be plain where a letter parts them, no column holds words, and all have the same decimal mark. */
function plainOf({ layout: { separator }, columns }: Sniffed): Marks | null {
  const mark = columns[0]!.decimal
  if (separator.length > 1 || columns.some(({ wordy, decimal }) => wordy || decimal !== mark)) return null
  return separator === mark ? null : { separator: separator.charCodeAt(0), mark: mark.charCodeAt(0) }
}

/** What the fields of a row are. */
interface Sorted {
  /** How many are figures, or say themselves that they are none. */
  numbers: number
  /** Place of the first that is a text among figures; negative: none. */
  note: number
  /** Up to the last one that is not empty. */
  width: number
}

/** Why a row is left out; null: it is kept. */
function whyNot(
  record: Rec,
  fields: string[],
  { note, width }: Sorted,
  before: number,
  sniffed: Sniffed,
): SkipReason | null {
  const { columns, least } = sniffed
  if (note >= 0)
    return {
      kind: 'note',
      column: (columns[note] && headingOf(columns[note]).name) || `#${note + 1}`,
      text: shown(fields[note]!.trim()),
    }
  if (!record.ended && isCut(fields, before, sniffed)) return { kind: 'cut' }
  if (width > columns.length || fields.length < least)
    return { kind: 'fields', given: Math.max(width, fields.length), wanted: columns.length }
  return null
}

/** Of the last line, which nothing ends: whether it breaks off. */
function isCut(fields: string[], before: number, { columns, least, lastDigits }: Sniffed): boolean {
  if (fields.length < Math.max(before, least)) return true
  return lastDigits > 0 && fields.length === columns.length && digitsOf(fields[columns.length - 1]!) < lastDigits
}

const shown = (text: string) => (text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text)
