/** Numbers as a person types and steps them. */

export type Parsed = { ok: true; value: number } | { ok: false; why: string }

/**
 * Reads "1.2e3", "1,5", "−3", "12 000", "1.2 × 10³" and thousands such as "1,234.5". `symbol` is the unit that may stand behind.
 * A text such as "1,234" is refused: it can mean two numbers.
 */
export function parseNumber(text: string, symbol = ''): Parsed {
  let rest = text.trim()
  if (symbol && rest.endsWith(symbol)) rest = rest.slice(0, -symbol.length)
  rest = rest
    .replace(/[\s\u202f\u00a0\u2009']/g, '')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[×x*·]10\^?([-+]?\d+|[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)$/, (_, power: string) => `e${lower(power)}`)
  if (rest === '') return { ok: false, why: 'Nothing was given' }
  if (/^[-+]?[1-9]\d{0,2},\d{3}(e[-+]?\d+)?$/i.test(rest))
    return {
      ok: false,
      why: `“${text.trim()}” can mean ${rest.replace(',', '.')} or ${rest.replace(',', '')}: write a point, or leave the comma out`,
    }
  const plain = decimalPoint(rest)
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain))
    return { ok: false, why: `“${shorten(text.trim())}” is not a number` }
  const value = Number(plain)
  return Number.isFinite(value) ? { ok: true, value } : { ok: false, why: `“${shorten(text.trim())}” is too large` }
}

/** A figure and what stands behind it: "4.5 in" is "4.5" and "in"; an exponent belongs to the figure. */
export function splitUnit(text: string): { figure: string; unit: string } {
  const [, figure = text, unit = ''] =
    /^(.*?[\d⁰¹²³⁴⁵⁶⁷⁸⁹][.,]?)\s*((?!e[-+]?\d|[x·]\s*10)(?:1\/|[/°%µ\p{L}]).*)$/iu.exec(text.trim()) ?? []
  return { figure, unit }
}

/** Both marks: the last one is the decimal mark. One comma: a decimal comma. Several alike: thousands. */
function decimalPoint(text: string): string {
  if (/^[-+]?[1-9]\d{0,2}((,\d{3})+\.\d*|(,\d{3}){2,})(e[-+]?\d+)?$/i.test(text)) return text.replaceAll(',', '')
  if (/^[-+]?[1-9]\d{0,2}((\.\d{3})+,\d*|(\.\d{3}){2,})(e[-+]?\d+)?$/i.test(text))
    return text.replaceAll('.', '').replace(',', '.')
  return text.replace(',', '.')
}

const lower = (power: string) =>
  [...power].map((c) => (c === '⁻' ? '-' : '⁰¹²³⁴⁵⁶⁷⁸⁹'.includes(c) ? String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c)) : c)).join('')

const shorten = (text: string) => (text.length > 24 ? `${text.slice(0, 23)}…` : text)

/**
 * The value `count` steps on, a step being 1 in the second significant digit; steps land on round figures. From a power of ten
 * downwards the step is that of the decade below, so that up and down undo each other. `smallest` is the step at zero.
 */
export function stepNumber(value: number, count: number, smallest: number): number {
  const size = Math.abs(value)
  const shrinking = count * value < 0
  let step = size === 0 ? smallest : 10 ** (decade(size) - 1)
  if (shrinking && size > 0 && Math.abs(size / 10 ** decade(size) - 1) < 1e-9) step /= 10
  step = Math.max(step, smallest)
  const steps = value / step
  const from =
    Math.abs(steps - Math.round(steps)) < 1e-6 ? Math.round(steps) : count > 0 ? Math.floor(steps) : Math.ceil(steps)
  return clean((from + count) * step)
}

/** `value` rounded to the power of ten at or below `grain`. */
export function roundTo(value: number, grain: number): number {
  if (grain <= 0 || !Number.isFinite(grain)) return value
  const unit = 10 ** decade(grain)
  return clean(Math.round(value / unit) * unit)
}

/** Exponent of the leading digit. */
export const decade = (size: number) => Number(size.toExponential().split('e')[1])

const clean = (value: number) => Number(value.toPrecision(12))
