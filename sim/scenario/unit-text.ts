/**
 * A unit as a person writes it, such as `kN`, `lbf·s/in` or `A/(mm s)`: its size in SI and what it measures. Factors are exact: inch
 * and pound by the international yard and pound agreement of 1959, the pound-force through standard gravity (NIST Special
 * Publication 811, 2008, appendix B), prefixes of the SI (BIPM, SI brochure, table 7).
 */
export interface UnitSize {
  /** SI value of one of it. */
  factor: number
  /** Powers of metre, kilogram, second, ampere, kelvin and radian. */
  powers: number[]
}

const inch = 0.0254
const pound = 0.45359237
const gravity = 9.80665

/** SI value of each unit without prefix, and its powers as in `UnitSize`; powers left out are zero. */
const UNITS: Record<string, [factor: number, ...powers: number[]]> = {
  m: [1, 1],
  g: [1e-3, 0, 1],
  s: [1, 0, 0, 1],
  A: [1, 0, 0, 0, 1],
  N: [1, 1, 1, -2],
  Pa: [1, -1, 1, -2],
  J: [1, 2, 1, -2],
  V: [1, 2, 1, -3, -1],
  Ω: [1, 2, 1, -3, -2],
  H: [1, 2, 1, -2, -2],
  W: [1, 2, 1, -3],
  Hz: [1, 0, 0, -1],
  K: [1, 0, 0, 0, 0, 1],
  '°C': [1, 0, 0, 0, 0, 1],
  '°F': [5 / 9, 0, 0, 0, 0, 1],
  rad: [1, 0, 0, 0, 0, 0, 1],
  '°': [Math.PI / 180, 0, 0, 0, 0, 0, 1],
  rev: [2 * Math.PI, 0, 0, 0, 0, 0, 1],
  '%': [0.01],
  '1': [1],
  in: [inch, 1],
  ft: [12 * inch, 1],
  mil: [inch / 1000, 1],
  lb: [pound, 0, 1],
  oz: [pound / 16, 0, 1],
  lbf: [pound * gravity, 1, 1, -2],
  ozf: [(pound / 16) * gravity, 1, 1, -2],
  psi: [(pound * gravity) / (inch * inch), -1, 1, -2],
  min: [60, 0, 0, 1],
  h: [3600, 0, 0, 1],
}

/** Those that take a prefix. */
const PREFIXED = /^([nµmcdkMG])(m|g|s|A|N|V|Ω|H|W|Hz|Pa|J|psi)$/
const PREFIXES: Record<string, number> = { n: 1e-9, µ: 1e-6, m: 1e-3, c: 1e-2, d: 0.1, k: 1e3, M: 1e6, G: 1e9 }

/** Other spellings. */
const SPELLINGS: [RegExp, string][] = [
  [/¹·⁵/g, '^1.5'],
  [/\bu(?=[msAVHN]\b)|μ/g, 'µ'],
  [/\u2126|ohms?\b/gi, 'Ω'],
  [/\bdeg\b/g, '°'],
  [/\brpm\b/g, 'rev/min'],
  [/\bsec\b/g, 's'],
  [/\blbs\b/g, 'lb'],
  [/[*⋅×]/g, '·'],
]

const known = new Map<string, UnitSize | null>()

/** Null: no unit. '' is the unit of a bare number. */
export function unitSize(text: string): UnitSize | null {
  if (!known.has(text)) {
    if (known.size > 500) known.clear() // whatever is typed passes by here
    known.set(text, readUnit(text))
  }
  return known.get(text)!
}

function readUnit(text: string): UnitSize | null {
  const plain = SPELLINGS.reduce((rest, [spelling, usual]) => rest.replace(spelling, usual), text.trim())
  const size: UnitSize = { factor: 1, powers: [0, 0, 0, 0, 0, 0] }
  const [above = '', ...below] = plain.split('/')
  const read = [above, ...below].every((group, place) =>
    group
      .replace(/^\s*\((.*)\)\s*$/, '$1')
      .split(/[·\s]+/)
      .filter((factor) => factor !== '')
      .every((factor) => multiply(size, factor, place === 0 ? 1 : -1)),
  )
  return read && below.every((group) => group.trim() !== '') ? size : null
}

/** Takes a unit with its power into `size`; false: unknown. */
function multiply(size: UnitSize, text: string, sign: 1 | -1): boolean {
  const [, name = '', power = '1'] = /^(.*?)(?:\^?(⁻?[⁰¹²³]+|-?\d+(?:\.\d+)?))?$/.exec(text === '1' ? '' : text) ?? []
  if (name === '') return text === '1'
  const [, prefix = '', base = name] = Object.hasOwn(UNITS, name) ? [] : (PREFIXED.exec(name) ?? [])
  const unit = Object.hasOwn(UNITS, base) ? UNITS[base] : undefined
  if (!unit) return false
  const [factor, ...powers] = unit
  const exponent = sign * Number(power.replace(/[⁻⁰¹²³]/g, (digit) => '-0123'['⁻⁰¹²³'.indexOf(digit)]!))
  const one = factor * (PREFIXES[prefix] ?? 1)
  size.factor *= exponent === 1 ? one : exponent === -1 ? 1 / one : one ** exponent
  powers.forEach((each, place) => {
    size.powers[place]! += exponent * each
  })
  return true
}

/** Whether both measure the same. */
export const isAlike = (a: UnitSize, b: UnitSize) =>
  a.powers.every((power, place) => Math.abs(power - b.powers[place]!) < 1e-9)
