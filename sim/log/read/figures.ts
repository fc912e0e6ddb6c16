/** A field to a figure. */

/** Words and marks for no value. */
const NOTHING =
  /^(?:[-+]?(?:nan|inf(?:inity)?|∞)|nan\(.*\)|n\/?a|#n\/a|null|none|nil|-+|\?+|\.|-?1\.#(?:qnan|snan|ind|inf)\d*|#(?:num|value|ref|div\/0)!?)$/i

/** 1,234,567.8 and 1.234.567,8 and 1 234 567.8 */
const GROUPED: Record<Decimal, RegExp> = {
  '.': /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/,
  ',': /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d*)?$/,
}
const SPACED = /^[+-]?\d{1,3}(?:[ \u00a0\u202f']\d{3})+(?:[.,]\d*)?$/
const COMMA = /^[+-]?(?:\d+,\d*|,\d+)(?:e[+-]?\d+)?$/i

export type Decimal = '.' | ','

/** NaN where the field holds none: `isMissing` tells whether it says so itself. */
export function figureOf(field: string, decimal: Decimal): number {
  const value = +field
  if (value === 0) return field.trim() === '' ? Number.NaN : value
  if (Number.isNaN(value)) return slowly(field.trim(), decimal)
  // Where commas are decimal, points group: 1.234 is a thousand.
  if (decimal === ',' && GROUPED[','].test(field.trim())) return Number(field.replaceAll('.', ''))
  return Number.isFinite(value) ? value : Number.NaN
}

function slowly(field: string, decimal: Decimal): number {
  const text = field.replace('\u2212', '-')
  if (COMMA.test(text) && !(decimal === '.' && GROUPED['.'].test(text))) return Number(text.replace(',', '.'))
  if (GROUPED['.'].test(text)) return Number(text.replaceAll(',', ''))
  if (GROUPED[','].test(text)) return Number(text.replaceAll('.', '').replace(',', '.'))
  if (SPACED.test(text)) return Number(text.replaceAll(/[ \u00a0\u202f']/g, '').replace(',', '.'))
  if (/^[+-]?[\d.,]+d[+-]?\d+$/i.test(text)) return Number(text.replace(/d/i, 'e').replace(',', '.'))
  const value = text === field ? Number.NaN : Number(text)
  return Number.isNaN(value) ? clockTime(text) : value
}

export const isMissing = (field: string): boolean => {
  const text = field.trim()
  return text === '' || NOTHING.test(text) || Math.abs(Number(text)) === Infinity
}

const DAY = /^(?:(\d{4})[-/](\d\d?)[-/](\d\d?)|(\d\d?)\.(\d\d?)\.(\d{4}))[T ]+/
const HOURS = /^(\d{1,2}):(\d\d):(\d\d(?:[.,]\d+)?)(?:Z|[+-]\d\d:?\d\d)?$/

/** Seconds since midnight of `12:00:01.250`, since 1970 with a day before it; NaN: it is none. */
export function clockTime(text: string): number {
  const day = DAY.exec(text)
  const hours = HOURS.exec(day ? text.slice(day[0].length) : text)
  if (!hours) return Number.NaN
  const [, y, m, d, d2, m2, y2] = day ?? []
  const start = day ? Date.UTC(Number(y ?? y2), Number(m ?? m2) - 1, Number(d ?? d2)) / 1000 : 0
  return start + Number(hours[1]) * 3600 + Number(hours[2]) * 60 + Number(hours[3]!.replace(',', '.'))
}

/** How a field writes its decimals; null: it does not tell, as `12` or `1,234,567`. */
export function decimalIn(field: string): Decimal | null {
  const text = field.trim()
  if (/^[+-]?(?:\d{1,3}(?:,\d{3})+)?\d*\.\d*(?:e[+-]?\d+)?$/i.test(text)) return '.'
  if (/^[+-]?(?:\d{1,3}(?:\.\d{3})+)?\d*,\d*(?:e[+-]?\d+)?$/i.test(text)) return ','
  return null
}
