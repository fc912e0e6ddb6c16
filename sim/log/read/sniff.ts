/** The layout of a log, told from its first records: separator, decimals, where names, units and numbers stand. */
import { fieldsOf, pairsOf, SEPARATORS, type Separator } from './fields.ts'
import { clockTime, type Decimal, decimalIn, figureOf, isMissing } from './figures.ts'
import { namesIn } from './header.ts'
import type { Layout } from './log.ts'
import type { Rec } from './records.ts'

export interface RawColumn {
  name: string
  unit: string
  decimal: Decimal
  /** Words rather than figures. */
  wordy: boolean
  /** Times of the day, with or without a date, which come in seconds. */
  stamps: boolean
}

export interface Sniffed {
  layout: Layout
  columns: RawColumn[]
  /** Place of the first record of numbers among those looked at. */
  start: number
  /** Fields that a row has at least; rows of several clocks end one after the other. */
  least: number
  /** Text of the names, by which a repeated header is known. */
  header: string
  /** Digits behind the decimal mark of the last column where all rows have as many, else 0. */
  lastDigits: number
  /** How many names there are where they are not as many as columns, else 0. */
  misnamed: number
}

/** What one record is under a separator. */
interface Sort {
  fields: string[]
  /** Up to the last field that is not empty. */
  width: number
  numbers: number
  words: number
}

/** May be a row: some of its columns may hold words. */
const isRow = ({ numbers, words }: Sort) => numbers > 0 && words <= 2 * numbers
/** What a word counts against figures: it is likelier the mark of a wrong separator than a word. */
const WORD = 0.4

/** Null: no record holds numbers. */
export function sniff(records: readonly Rec[], encoding: string): Sniffed | null {
  let best: { separator: Separator; sorts: Sort[]; width: number; score: number } | null = null
  for (const separator of SEPARATORS) {
    const sorts = records.map(({ text }) => sortOf(text, separator))
    const { width, score } = widest(sorts)
    if (score > (best?.score ?? 0)) best = { separator, sorts, width, score }
  }
  return best && laidOut(records, encoding, best.separator, best.sorts, best.width)
}

function sortOf(text: string, separator: Separator): Sort {
  const sort: Sort = { fields: fieldsOf(text, separator), width: 0, numbers: 0, words: 0 }
  sort.fields.forEach((field, place) => {
    if (field.trim() === '') return
    sort.width = place + 1
    if (isNumber(field)) sort.numbers++
    else sort.words++
  })
  return sort
}

const isNumber = (field: string) => !Number.isNaN(figureOf(field, '.')) || isMissing(field)

/** The number of fields under which most figures stand in rows. */
function widest(sorts: readonly Sort[]): { width: number; score: number } {
  const scores = new Map<number, number>()
  for (const sort of sorts)
    if (isRow(sort)) scores.set(sort.width, (scores.get(sort.width) ?? 0) + sort.numbers - WORD * sort.words)
  let best = { width: 0, score: 0 }
  for (const [width, score] of scores) if (score > best.score) best = { width, score }
  return best
}

function laidOut(records: readonly Rec[], encoding: string, separator: Separator, sorts: Sort[], width: number) {
  const start = firstRow(sorts, width)
  if (start < 0) return null
  const rows = sorts.slice(start).filter(isRow)
  const least = Math.min(width, ...usual(rows))
  const most = Math.max(width, ...usual(rows))
  const head =
    separator === 'pairs' ? keysOf(records[start]!) : namesIn(records.slice(0, start), separator, most, records[start]!)
  const count = Math.max(most, head.names.length)
  const decimals = decimalsOf(rows, count, separator)
  const columns = Array.from({ length: count }, (_, place) => ({
    name: head.names[place] ?? '',
    unit: head.units[place] ?? '',
    decimal: decimals.columns[place]!,
    wordy: isWordy(rows, place),
    stamps: rows.some(({ fields }) => !Number.isNaN(clockTime(fields[place]?.trim() ?? ''))),
  }))
  const layout: Layout = {
    encoding,
    separator,
    decimal: decimals.file,
    preamble: records.slice(0, Math.min(start, 100)).map(({ text }) => text),
    namesLine: head.namesLine,
    unitsLine: head.unitsLine,
    dataLine: records[start]!.line,
    thinned: 1,
  }
  return {
    layout,
    columns,
    start,
    least,
    header: head.text,
    lastDigits: lastDigits(rows, count),
    misnamed: head.misnamed,
  }
}

/** The first of the rows of a table: like most of them in width, with words in columns of words only, and followed by another. */
function firstRow(sorts: readonly Sort[], width: number): number {
  const like = sorts.filter((sort) => isRow(sort) && sort.width === width)
  const wordy = Array.from({ length: width }, (_, place) => isWordy(like, place))
  const fits = (sort: Sort | undefined) =>
    sort !== undefined &&
    isRow(sort) &&
    sort.width >= width &&
    sort.fields.every((field, place) => wordy[place] || isMissing(field) || isNumber(field))
  const paired = sorts.findIndex((sort, place) => fits(sort) && fits(nextFilled(sorts, place)))
  return paired >= 0 ? paired : sorts.findIndex(fits)
}

function nextFilled(sorts: readonly Sort[], place: number): Sort | undefined {
  let next = place + 1
  while (next < sorts.length && sorts[next]!.width === 0) next++
  return sorts[next]
}

/** Widths that at least a twentieth of the rows have. */
function usual(rows: readonly Sort[]): number[] {
  const counts = new Map<number, number>()
  for (const { width } of rows) counts.set(width, (counts.get(width) ?? 0) + 1)
  return [...counts].filter(([, count]) => count >= 0.05 * rows.length).map(([width]) => width)
}

function keysOf({ text, line }: Rec) {
  const names = (pairsOf(text) ?? []).map(([key]) => key)
  return { names, units: [] as string[], namesLine: line, unitsLine: 0, text: '', misnamed: 0 }
}

/** By column, since a program may write the decimals of its stamps in another way than the rest. */
function decimalsOf(rows: readonly Sort[], count: number, separator: Separator): { file: Decimal; columns: Decimal[] } {
  const seen = Array.from({ length: count }, (_, place) => marksOf(rows, place))
  const points = seen.some(({ points: some, commas }) => some > 0 && commas === 0)
  const own = seen.map(({ points: p, commas, groupedPoints, groupedCommas }): Decimal | null => {
    if (p + commas === 0) return null
    if (p === 0) return separator === ',' && points && groupedCommas === commas ? '.' : ','
    if (commas === 0) return '.'
    if (groupedPoints === p) return ','
    return groupedCommas === commas || p >= commas ? '.' : ','
  })
  const file: Decimal =
    own.filter((mark) => mark === ',').length > own.filter((mark) => mark === '.').length ? ',' : '.'
  return { file, columns: own.map((mark) => mark ?? file) }
}

function marksOf(rows: readonly Sort[], place: number) {
  const marks = { points: 0, commas: 0, groupedPoints: 0, groupedCommas: 0 }
  for (const { fields } of rows) {
    const field = fields[place]?.trim() ?? ''
    const mark = decimalIn(field)
    if (mark === '.') marks.points++
    if (mark === ',') marks.commas++
    if (mark === '.' && /^[+-]?\d{1,3}(?:\.\d{3})+$/.test(field)) marks.groupedPoints++
    if (mark === ',' && /^[+-]?\d{1,3}(?:,\d{3})+$/.test(field)) marks.groupedCommas++
  }
  return marks
}

function isWordy(rows: readonly Sort[], place: number): boolean {
  let balance = 0
  for (const { fields } of rows) {
    const field = fields[place] ?? ''
    if (!isMissing(field)) balance += isNumber(field) ? -1 : 1
  }
  return balance > 0
}

function lastDigits(rows: readonly Sort[], count: number): number {
  const digits = new Set(rows.slice(0, -1).map(({ fields }) => digitsOf(fields[count - 1] ?? '')))
  return digits.size === 1 ? [...digits][0]! : 0
}

/** Digits behind the decimal mark; 0 of what has none, or an exponent. */
export const digitsOf = (field: string): number => /^[+-]?\d+[.,](\d+)$/.exec(field.trim())?.[1]?.length ?? 0
