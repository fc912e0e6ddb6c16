/** A record to its fields. */
import Papa from 'papaparse'
import type { Layout } from './log.ts'

export type Separator = Layout['separator']

/** In the order in which they are tried. */
export const SEPARATORS: readonly Separator[] = [';', '\t', ',', '|', 'pairs', 'blanks']

/** Of another kind behind the last field, such as a `;` at the end of each comma-separated row or the commas that a spreadsheet adds. */
const TAILS: Record<Separator, RegExp> = {
  ';': /[,\t ]+$/,
  '\t': /[,; ]+$/,
  ',': /[;\t ]+$/,
  '|': /[,;\t ]+$/,
  pairs: /[,;\t ]+$/,
  blanks: /[,;\t ]+$/,
}

const TAIL_LETTERS = ',;\t '

export function fieldsOf(record: string, separator: Separator): string[] {
  const last = record[record.length - 1]
  const tailed = last !== undefined && last !== separator && TAIL_LETTERS.includes(last)
  const text = unwrapped(tailed ? record.replace(TAILS[separator], '') : record, separator)
  if (separator === 'blanks') return blanks(text)
  if (separator === 'pairs') return (pairsOf(text) ?? []).map(([, value]) => value)
  return text.includes('"') ? quoted(text, separator) : text.split(separator)
}

/** A row that stands in one pair of quotes as a whole. */
function unwrapped(text: string, separator: Separator): string {
  if (text[0] !== '"') return text
  const inner = /^"([^"]*)"$/.exec(text)?.[1]
  return inner !== undefined && (separator === 'blanks' || inner.includes(separator)) ? inner : text
}

const blanks = (text: string) =>
  text.includes('"')
    ? Array.from(text.matchAll(/"([^"]*)"|\S+/g), ([whole, inner]) => inner ?? whole)
    : text.trim().split(/\s+/)

function quoted(text: string, separator: string): string[] {
  // RFC 4180 knows no blanks around quotes, recorders do.
  const tight = text.replace(/^ +"/, '"').replaceAll(new RegExp(`\\${separator} +"`, 'g'), `${separator}"`)
  const [row] = Papa.parse<string[]>(tight, { delimiter: separator, newline: '\n' }).data
  return row ?? ['']
}

const PAIR = /([\p{L}_][\p{L}\p{N}_ .()[\]/%²-]*?)\s*[:=]\s*([+-]?[\d.,]+(?:[eE][+-]?\d+)?|nan|inf)(?=$|[\s,;])/giu

/** Keys and values of a line such as `Time: 120 Position: 594`; null: it is none. */
export function pairsOf(text: string): [key: string, value: string][] | null {
  const pairs = Array.from(text.matchAll(PAIR), ([, key, value]): [string, string] => [
    key!.trim(),
    value!.replace(/[.,]$/, ''),
  ])
  return pairs.length > 1 && text.replaceAll(PAIR, '').replaceAll(/[\s,;]/g, '') === '' ? pairs : null
}
