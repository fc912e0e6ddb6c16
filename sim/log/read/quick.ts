/**
 * Rows of plain figures, which nearly all rows are, without a string for each field: a log of a gigabyte holds a hundred million of
 * them. Whatever is not as plain is read field by field (`fieldsOf`, `figureOf`), with the same outcome to the last bit.
 */

/** Powers of ten that are exact, so that one division or product rounds once (Clinger, 1990, fast path). */
const POWERS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`))
/** Below this a digit can be added exactly. */
const ROOM = 2 ** 53 / 10 - 1

const [ZERO, NINE, PLUS, MINUS, BLANK] = [48, 57, 43, 45, 32]

/** Codes of letters: what parts fields, and the decimal mark. */
export interface Marks {
  separator: number
  mark: number
}

/**
 * Puts the figures of the row that stands from `from` to `length` of a text into `figures`, NaN for an empty field, and says how many fields there are; -1: the row is not plain.
 * Letters are looked up in the whole text, so that no string is made of the row either.
 */
export function quickRow(
  text: string,
  from: number,
  length: number,
  { separator, mark }: Marks,
  figures: Float64Array,
): number {
  let field = 0
  let at = from
  for (;;) {
    if (field === figures.length) return -1
    while (at < length && text.charCodeAt(at) === BLANK) at++
    const begin = at
    let code = at < length ? text.charCodeAt(at) : separator
    const negative = code === MINUS
    if (negative || code === PLUS) code = text.charCodeAt(++at)
    let mantissa = 0
    let digits = 0
    let scale = 0
    let behind = false
    for (; at < length; code = text.charCodeAt(++at)) {
      if (code >= ZERO && code <= NINE) {
        if (mantissa > ROOM) return -1
        mantissa = mantissa * 10 + code - ZERO
        digits++
        if (behind) scale--
      } else if (code === mark && !behind) behind = true
      else break
    }
    if (digits > 0 && (code === 101 || code === 69) && at < length) {
      const end = exponentEnd(text, at + 1, length)
      if (end < 0) return -1
      scale += Number(text.slice(at + 1, end))
      at = end
    }
    const empty = digits === 0
    if ((empty && at > begin) || scale < -22 || scale > 22) return -1
    const size = scale < 0 ? mantissa / POWERS[-scale]! : mantissa * POWERS[scale]!
    figures[field++] = empty ? Number.NaN : negative ? -size : size
    while (at < length && text.charCodeAt(at) === BLANK) at++
    if (at >= length) return field
    if (text.charCodeAt(at++) !== separator) return -1
  }
}

/** Behind the exponent that begins at `at`; -1: there is none. */
function exponentEnd(text: string, at: number, length: number): number {
  let end = at
  const sign = text.charCodeAt(end)
  if (sign === PLUS || sign === MINUS) end++
  const first = end
  while (end < length && text.charCodeAt(end) >= ZERO && text.charCodeAt(end) <= NINE) end++
  return end > first && end - first < 5 ? end : -1
}
