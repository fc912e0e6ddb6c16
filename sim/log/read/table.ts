/** The numbers of a log as they stand in it, before anybody knows what they mean. They grow with the rows, not with their text. */
import type { LogFault, SkipReason } from './facts.ts'
import type { Layout, Skipped } from './log.ts'
import type { RawColumn } from './sniff.ts'

/** Most figures that are kept, 128 MiB; beyond, every other row goes, again and again. */
export const MOST_FIGURES = 2 ** 24

/** Places where blocks of rows may part, and words and skipped lines that are listed. */
const MOST_BREAKS = 10_000
const MOST_WORDS = 64
const MOST_SKIPS = 1000

export interface TableColumn extends RawColumn {
  values: Float64Array
  /** Of a column of words, in the order in which they first came. */
  words: string[]
}

export interface Table {
  fault: LogFault | null
  layout: Layout | null
  columns: TableColumn[]
  rows: number
  /** Line of each row in the file. */
  lines: Float64Array
  /** Rows before which a line of text stood, a blank line or a comment. */
  breaks: number[]
  gaps: number[]
  skipped: Skipped[]
  skippedMore: number
  misnamed: number
}

/** Rows come one by one, in the order of the file. */
export class Rows {
  readonly words: string[][]
  values: Float64Array[]
  lines: Float64Array
  rows = 0
  every = 1
  breaks: number[] = []
  gaps: number[] = []
  private readonly most: number
  private seen = 0
  private gapsKept = true

  constructor(columns: number, mostFigures = MOST_FIGURES) {
    this.most = Math.max(4, 2 * Math.floor(mostFigures / (2 * Math.max(1, columns))))
    const first = Math.min(1024, this.most)
    this.values = Array.from({ length: columns }, () => new Float64Array(first))
    this.lines = new Float64Array(first)
    this.words = Array.from({ length: columns }, () => [])
  }

  /** Where the figures of the next row go; -1: it is not kept. */
  place(line: number): number {
    const wanted = this.seen % this.every === 0
    this.seen++
    if (!wanted) return -1
    // The number of rows that are kept is even, so that this one stays wanted.
    if (this.rows === this.most) this.thin()
    if (this.rows === this.lines.length) this.grow()
    this.lines[this.rows] = line
    return this.rows++
  }

  /** Figure of a word. */
  wordAt(column: number, word: string): number {
    const words = this.words[column]!
    const known = words.indexOf(word)
    if (known >= 0) return known
    return words.length < MOST_WORDS ? words.push(word) - 1 : Number.NaN
  }

  /** A line of text, or only a blank one or a comment, stands before the next row. */
  part(hard: boolean): void {
    if (this.rows === 0) return
    const places = hard ? this.breaks : this.gaps
    if (places.at(-1) === this.rows || (!hard && !this.gapsKept)) return
    places.push(this.rows)
    // So many blank lines part nothing: they stand between all rows.
    if (places.length > MOST_BREAKS) {
      places.length = 0
      if (!hard) this.gapsKept = false
    }
  }

  private grow(): void {
    const size = Math.min(this.most, 2 * this.lines.length)
    this.values = this.values.map((column) => grown(column, size))
    this.lines = grown(this.lines, size)
  }

  /** Keeps every other row. */
  private thin(): void {
    for (const column of [...this.values, this.lines])
      for (let row = 0; row < this.most / 2; row++) column[row] = column[2 * row]!
    this.rows = this.most / 2
    this.every *= 2
    this.breaks = this.breaks.map((row) => Math.ceil(row / 2))
    this.gaps = this.gaps.map((row) => Math.ceil(row / 2))
  }
}

function grown(column: Float64Array, size: number): Float64Array {
  const larger = new Float64Array(size)
  larger.set(column)
  return larger
}

/** Lines that were left out; those that follow each other for the same reason are one entry. */
export class Skips {
  readonly list: Skipped[]
  more: number

  /** Goes on from others. */
  constructor(list: readonly Skipped[] = [], more = 0) {
    this.list = list.map((each) => ({ ...each }))
    this.more = more
  }

  inOrder(): Skipped[] {
    return [...this.list].sort((a, b) => a.row - b.row)
  }

  add(line: number, why: SkipReason, lastLine = line): void {
    const last = this.list.at(-1)
    if (last && line > last.row && line <= last.lastRow + 2 && isSame(last.why, why)) last.lastRow = lastLine
    else if (this.list.length < MOST_SKIPS) this.list.push({ row: line, lastRow: lastLine, why })
    else this.more += lastLine - line + 1
  }
}

const isSame = (a: SkipReason, b: SkipReason) => JSON.stringify(a) === JSON.stringify(b)
