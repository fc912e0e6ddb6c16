/** Names and units of the columns, from the lines above the numbers. */
import { fieldsOf, SEPARATORS, type Separator } from './fields.ts'
import { figureOf } from './figures.ts'
import type { Rec } from './records.ts'
import { isUnit } from './units.ts'

export interface Head {
  names: string[]
  units: string[]
  namesLine: number
  unitsLine: number
  /** The line of names as it stands. */
  text: string
  /** How many names there are where they are not as many as columns, else 0. */
  misnamed: number
}

/** Marks before a line that is not meant as data; in front of names they are taken off. */
const MARK = /^\s*(?:#+|%+|\/\/+|!+)\s*/
export const isComment = (text: string): boolean => MARK.test(text)

/** How far above the numbers the names are looked for, blank lines not counted: a line of text may stand between. */
const REACH = 3

/** `before` are the records before the first row of numbers, `row`, which has `width` fields. */
export function namesIn(before: readonly Rec[], separator: Separator, width: number, row: Rec): Head {
  const lines = before.filter(({ text }) => text.trim() !== '').slice(-REACH)
  const rows = lines.map((rec) => ({ rec, fields: fitted(rec, separator, width, row) }))
  const place = rows.findLastIndex(({ fields }) => fields !== null)
  if (place < 0) return { ...NAMELESS, misnamed: misnamed(lines.at(-1), separator, width) }
  const { rec: lowLine, fields } = rows[place]!
  const low = fields!
  const high = rows[place - 1]
  const above = high?.fields ? { fields: high.fields, rec: high.rec } : null
  if (areUnits(low)) return withUnits(above && !areUnits(above.fields) ? above : null, low, lowLine)
  if (above && areUnits(above.fields)) return withUnits({ fields: low, rec: lowLine }, above.fields, above.rec)
  const named = { names: low, units: [], namesLine: lowLine.line, unitsLine: 0, text: lowLine.text, misnamed: 0 }
  if (above && isUnit(bare(low[0]!)) && !isUnit(bare(above.fields[0]!)))
    return { ...named, names: [above.fields[0]!, ...low.slice(1)], units: [bare(low[0]!)], unitsLine: lowLine.line }
  return named
}

const NAMELESS: Head = { names: [], units: [], namesLine: 0, unitsLine: 0, text: '', misnamed: 0 }

const withUnits = (names: { fields: string[]; rec: Rec } | null, units: string[], rec: Rec): Head => ({
  names: names?.fields ?? [],
  units: units.map(bare),
  namesLine: names?.rec.line ?? 0,
  unitsLine: rec.line,
  text: names?.rec.text ?? rec.text,
  misnamed: 0,
})

/** `[ms]` and `(s)` are units in brackets. */
const bare = (text: string) =>
  text
    .trim()
    .replace(/^[[({<](.*)[\])}>]$/, '$1')
    .trim()

const areUnits = (fields: readonly string[]) => {
  const filled = fields.map(bare).filter((field) => field !== '')
  return filled.length > 0 && filled.every(isUnit)
}

/** The fields of a line where they are one for each column; null: it does not name columns. */
function fitted({ text }: Rec, separator: Separator, width: number, row: Rec): string[] | null {
  const line = text.replace(MARK, '')
  if (separator === 'blanks') return spaced(line, width, row.text)
  for (const each of [separator, ...SEPARATORS]) {
    const all = fieldsOf(line, each).map((field) => field.replaceAll(/\s+/g, ' ').trim())
    const fields = trimmed(all)
    if (!areNames(fields)) continue
    if (fields.length === width) return fields
    // The last name may be empty; a longer line names columns that rows leave empty; units may end early.
    if (each === separator && (all.length >= width || areUnits(fields))) return fields
  }
  return null
}

/** Without empty ones at the end. */
function trimmed(fields: string[]): string[] {
  let end = fields.length
  while (end > 0 && fields[end - 1]!.trim() === '') end--
  return fields.slice(0, end)
}

/** Neither figures nor dates, nor `Date:` and what follows it. */
const areNames = (fields: readonly string[]) =>
  fields.some((field) => field !== '') &&
  fields.every((field) => Number.isNaN(figureOf(field, '.')) && !/:$|^\d+[-/.]\d+[-/.]\d+/.test(field.trim()))

/** Names in a table of blanks, where a name may hold one. */
function spaced(line: string, width: number, row: string): string[] | null {
  const words = fieldsOf(line, 'blanks')
  if (!areNames(words)) return null
  if (words.length === width) return words
  const wide = line.trim().split(/\s{2,}|\t/)
  if (wide.length === width) return wide
  const bracketed = line
    .trim()
    .replaceAll(/\s+(?=[[(])/g, ' ')
    .split(/\s+(?![[(])/)
  if (bracketed.length === width) return bracketed
  return words.length > width ? byPlace(line, width, row) : null
}

/** Words belong to the column of figures under which they end, where those stand to the right, else under which they begin. */
function byPlace(line: string, width: number, row: string): string[] | null {
  const columns = Array.from(row.matchAll(/\S+/g), spanOf)
  const words = Array.from(line.matchAll(/\S+/g))
  const rules = [
    (word: RegExpExecArray) => columns.findIndex(([, right]) => spanOf(word)[1] <= right),
    (word: RegExpExecArray) => columns.findLastIndex(([left]) => spanOf(word)[0] >= left),
  ]
  for (const rule of rules) {
    const names = columns.map((_, place) => words.filter((word) => rule(word) === place).map(([text]) => text))
    const all = words.every((word) => rule(word) >= 0)
    if (all && columns.length === width && names.every((each) => each.length > 0))
      return names.map((each) => each.join(' '))
  }
  return null
}

const spanOf = (found: RegExpExecArray): [number, number] => [found.index, found.index + found[0].length]

/** How many names a line has that looks like names and has not as many as there are columns. */
function misnamed(line: Rec | undefined, separator: Separator, width: number): number {
  if (!line || separator === 'blanks' || separator === 'pairs') return 0
  const fields = trimmed(fieldsOf(line.text.replace(MARK, ''), separator))
  return fields.length > 1 && fields.length < width && areNames(fields) ? fields.length : 0
}

/** Name and unit of a heading such as `torque [Nm]`, `Elapsed_s`, `pos/mm` or `[vel [rad/s]`. `fits` says whether a unit suits a name. */
export function splitHeading(
  text: string,
  fits: (name: string, unit: string) => boolean,
): { name: string; unit: string } {
  const bracket = /^(.*)[[({<]([^[\](){}<>]*)[\])}>]?\s*$/s.exec(text)
  if (bracket && (isUnit(bracket[2]!.trim()) || fits(bracket[1]!, bracket[2]!.trim())))
    return { name: bracket[1]!.replaceAll(/[[\](){}<>]/g, ' ').trim(), unit: bracket[2]!.trim() }
  const suffix = /^(.+?)(?:\s*[_,/.:-]\s*|\s+(?:in\s+)?)([^\s_,:]+)$/.exec(text)
  for (const [, name, unit] of [suffix, /^(.+?)\s*\/\s*(.+)$/.exec(text)].filter((each) => each !== null))
    if (fits(name!, unit!)) return { name: name!.trim(), unit: unit! }
  return { name: text.trim(), unit: '' }
}
