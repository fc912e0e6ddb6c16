/**
 * Units in which people read: values are stored in SI, shown in the customary SI multiple or in US units.
 * Factors are exact: inch and pound by the international yard and pound agreement of 1959, the pound-force through standard
 * gravity (NIST Special Publication 811, 2008, appendix B).
 */
export type UnitSystem = 'si' | 'us'

export interface ShownUnit {
  /** As written after a figure; a part after ^ is a power, e.g. `N/mm^1.5`. '' for a bare number. */
  symbol: string
  toShown(si: number): number
  toSi(shown: number): number
}

const inch = 0.0254
const pound = 0.45359237
const poundForce = pound * 9.80665
const fahrenheit = 5 / 9

/** SI value of one of each unit. */
const FACTORS: Record<string, number> = {
  '': 1,
  '%': 0.01,
  kg: 1,
  g: 1e-3,
  lb: pound,
  oz: pound / 16,
  m: 1,
  mm: 1e-3,
  µm: 1e-6,
  in: inch,
  mil: inch / 1000,
  s: 1,
  ms: 1e-3,
  µs: 1e-6,
  '1/s': 1,
  kHz: 1e3,
  rad: 1,
  '°': Math.PI / 180,
  'rad/s': 1,
  Hz: 2 * Math.PI,
  N: 1,
  lbf: poundForce,
  'N/s': 1,
  'lbf/s': poundForce,
  'N/m': 1,
  'N/mm': 1e3,
  'N/µm': 1e6,
  'lbf/in': poundForce / inch,
  'm/s': 1,
  'mm/s': 1e-3,
  'in/s': inch,
  's/m': 1,
  's/in': 1 / inch,
  'm/s²': 1,
  'in/s²': inch,
  'm/s³': 1,
  'in/s³': inch,
  'N·s/m': 1,
  'lbf·s/in': poundForce / inch,
  V: 1,
  A: 1,
  mA: 1e-3,
  Ω: 1,
  H: 1,
  mH: 1e-3,
  W: 1,
  'N/A': 1,
  'lbf/A': poundForce,
  N·m: 1,
  mN·m: 1e-3,
  ozf·in: (poundForce / 16) * inch,
  'N·m/A': 1,
  'mN·m/A': 1e-3,
  'ozf·in/A': (poundForce / 16) * inch,
  'kg·m²': 1,
  'g·cm²': 1e-7,
  'oz·in²': (pound / 16) * inch * inch,
  'A/m': 1,
  'A/mm': 1e3,
  'A/in': 1 / inch,
  'A/(m·s)': 1,
  'A/(mm·s)': 1e3,
  'A/(in·s)': 1 / inch,
  'A·s/m': 1,
  'A·s/in': 1 / inch,
  'A·s²/m': 1,
  'A·s²/in': 1 / inch,
  'm/(N·s)': 1,
  'mm/(N·s)': 1e-3,
  'in/(lbf·s)': inch / poundForce,
  'm/(N·s²)': 1,
  'mm/(N·s²)': 1e-3,
  'in/(lbf·s²)': inch / poundForce,
  'm/N': 1,
  'mm/N': 1e-3,
  'in/lbf': inch / poundForce,
  '°C': 1,
  '°F': fahrenheit,
  'K/W': 1,
  '°F/W': fahrenheit,
  '1/K': 1,
  '%/K': 0.01,
  '%/°F': 0.01 / fahrenheit,
}

/** Base units of those whose size hangs on the exponent of the contact law: force for each length to the power n. */
const POWERS: Record<string, [number, number]> = {
  'N/m^n': [1, 1],
  'N/mm^n': [1, 1e-3],
  'lbf/in^n': [poundForce, inch],
}

/** What a shown SI unit becomes in US units; the others stay as they are. */
const US: Record<string, string> = {
  kg: 'lb',
  g: 'oz',
  m: 'in',
  mm: 'in',
  µm: 'mil',
  N: 'lbf',
  'N/s': 'lbf/s',
  'N/m': 'lbf/in',
  'N/mm': 'lbf/in',
  'N/µm': 'lbf/in',
  'N/m^n': 'lbf/in^n',
  'N/mm^n': 'lbf/in^n',
  'm/s': 'in/s',
  'mm/s': 'in/s',
  's/m': 's/in',
  'm/s²': 'in/s²',
  'm/s³': 'in/s³',
  'N·s/m': 'lbf·s/in',
  'N/A': 'lbf/A',
  N·m: 'ozf·in',
  mN·m: 'ozf·in',
  'N·m/A': 'ozf·in/A',
  'mN·m/A': 'ozf·in/A',
  'kg·m²': 'oz·in²',
  'g·cm²': 'oz·in²',
  'A/m': 'A/in',
  'A/mm': 'A/in',
  'A/(m·s)': 'A/(in·s)',
  'A/(mm·s)': 'A/(in·s)',
  'A·s/m': 'A·s/in',
  'A·s²/m': 'A·s²/in',
  'm/(N·s)': 'in/(lbf·s)',
  'mm/(N·s)': 'in/(lbf·s)',
  'm/(N·s²)': 'in/(lbf·s²)',
  'mm/(N·s²)': 'in/(lbf·s²)',
  'm/N': 'in/lbf',
  'mm/N': 'in/lbf',
  '°C': '°F',
  'K/W': '°F/W',
  '1/K': '%/°F',
  '%/K': '%/°F',
}

export interface UnitSource {
  /** SI unit of the stored value. */
  unit: string
  /** Unit in which it is usually read. */
  shown?: string
}

/** Whether a unit can be converted; one that cannot is shown as it is stored. */
export const knowsUnit = (unit: string) => Object.hasOwn(FACTORS, unit) || Object.hasOwn(POWERS, unit)

/** The unit in which a quantity is shown. `exponent` is n of the contact law, for stiffness of the form N/m^n. */
export function shownUnit(source: UnitSource, system: UnitSystem, exponent = 1): ShownUnit {
  const customary = source.shown ?? source.unit
  const wanted = (system === 'us' && US[customary]) || customary
  const unit = knowsUnit(wanted) ? wanted : source.unit
  if (unit === '°F') return { symbol: '°F', toShown: (c) => tidy(c * 1.8 + 32), toSi: (f) => tidy((f - 32) / 1.8) }
  const power = POWERS[unit]
  const factor = power ? power[0] / power[1] ** exponent : (FACTORS[unit] ?? 1)
  const symbol = power ? unit.replace('^n', exponent === 1 ? '' : `^${exponent}`) : unit
  return { symbol, toShown: (si) => tidy(si / factor), toSi: (shown) => tidy(shown * factor) }
}

/** Takes the rounding noise of a conversion off: 70.1 mm is stored as 0.0701. */
const tidy = (value: number) => Number(value.toPrecision(13))

export const QUANTITIES = {
  force: { unit: 'N' },
  forceRate: { unit: 'N/s' },
  torque: { unit: 'N·m', shown: 'mN·m' },
  torqueConstant: { unit: 'N·m/A', shown: 'mN·m/A' },
  stiffness: { unit: 'N/m', shown: 'N/mm' },
  /** Of an axis, a screw, a bristle. */
  hardStiffness: { unit: 'N/m', shown: 'N/µm' },
  length: { unit: 'm', shown: 'mm' },
  smallLength: { unit: 'm', shown: 'µm' },
  speed: { unit: 'm/s', shown: 'mm/s' },
  acceleration: { unit: 'm/s²' },
  mass: { unit: 'kg', shown: 'g' },
  /** Of what moves in an axis. */
  movingMass: { unit: 'kg' },
  current: { unit: 'A' },
  smallCurrent: { unit: 'A', shown: 'mA' },
  voltage: { unit: 'V' },
  resistance: { unit: 'Ω' },
  inductance: { unit: 'H', shown: 'mH' },
  power: { unit: 'W' },
  time: { unit: 's' },
  shortTime: { unit: 's', shown: 'ms' },
  frequency: { unit: '1/s' },
  angularFrequency: { unit: 'rad/s' },
  /** Of a swing, from its angular frequency. */
  swing: { unit: 'rad/s', shown: 'Hz' },
  angle: { unit: 'rad', shown: '°' },
  temperature: { unit: '°C' },
  ratio: { unit: '', shown: '%' },
  number: { unit: '' },
} satisfies Record<string, UnitSource>

export type Quantity = keyof typeof QUANTITIES

/** The unit in which results and charts show a quantity. */
export const quantityUnit = (quantity: Quantity, system: UnitSystem) => shownUnit(QUANTITIES[quantity], system)
