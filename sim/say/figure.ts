/** Figures as a person reads them: significant digits, real minus, thin spaces, a dash where there is no figure. */

/** No-break thin space, between groups of three digits and around ×. */
const THIN = '\u202f'
const MINUS = '\u2212'
export const NO_FIGURE = '\u2014'

/** Digits that a figure is read with, unless somebody typed it. */
export const DIGITS = 3

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const raise = (power: number) =>
  (power < 0 ? '⁻' : '') + [...String(Math.abs(power))].map((digit) => RAISED[Number(digit)]).join('')

/** `digits` significant digits with their zeros kept: 52 → 52.0. Null, NaN and infinities give an em dash. */
export function formatFigure(value: number | null | undefined, digits = DIGITS): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return NO_FIGURE
  if (value === 0) return '0'
  const [mantissa = '', exponent = '0'] = Math.abs(value)
    .toExponential(digits - 1)
    .split('e')
  return sign(value) + spread(mantissa, Number(exponent))
}

/** As many digits as the value has, `most` at most and without trailing zeros: for sentences, and for figures that a person has typed. */
export function formatPlain(value: number, most = 6): string {
  if (!Number.isFinite(value)) return NO_FIGURE
  if (value === 0) return '0'
  const [mantissa = '', exponent = '0'] = Math.abs(value)
    .toExponential(most - 1)
    .split('e')
  const trimmed = mantissa.includes('.') ? mantissa.replace(/\.?0+$/, '') : mantissa
  return sign(value) + spread(trimmed, Number(exponent))
}

/** Figure and unit, a no-break space between them; `°` and a bare number stand without. */
export function withUnit(figure: string, symbol: string): string {
  if (symbol === '' || figure === NO_FIGURE) return figure
  return symbol === '°' ? figure + symbol : `${figure}\u00a0${raised(symbol)}`
}

/** `N/mm^1.5` with its power raised. */
const raised = (symbol: string) =>
  symbol.replace(/\^([\d.]+)/, (_, power: string) => [...power].map((digit) => RAISED[Number(digit)] ?? '·').join(''))

/** For a terminal, a file, a pipe: ordinary spaces, none within a figure. */
export const inPlainSpaces = (text: string) => text.replaceAll(THIN, '').replaceAll('\u00a0', ' ')

const sign = (value: number) => (value < 0 ? MINUS : '')

/** Writes `mantissa · 10^exponent` out, or with a power of ten where that would be long. */
function spread(mantissa: string, exponent: number): string {
  const digits = mantissa.replace('.', '')
  if (exponent < -4 || exponent > 6) return `${mantissa}${THIN}×${THIN}10${raise(exponent)}`
  if (exponent < 0) return `0.${'0'.repeat(-exponent - 1)}${digits}`
  const whole = digits.slice(0, exponent + 1).padEnd(exponent + 1, '0')
  const rest = digits.slice(exponent + 1)
  return groups(whole) + (rest && `.${rest}`)
}

const groups = (whole: string) => (whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole)
