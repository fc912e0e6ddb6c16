/** Units in which people read and type: values are stored in SI, shown in the customary SI multiple or in US units. */
import { isAlike, unitSize } from '../scenario/unit-text.ts'

export type UnitSystem = 'si' | 'us'

export interface ShownUnit {
  /** As written after a figure; a part after ^ is a power, e.g. `N/mm^1.5`. '' for a bare number. */
  symbol: string
  toShown(si: number): number
  toSi(shown: number): number
  /** A figure with any unit behind it in SI; null: the unit is unknown or measures something else. */
  typed(figure: number, unit: string): number | null
  /** Some units that may be typed. */
  others(): string[]
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
  MPa: 'psi',
  GPa: 'Mpsi',
  J: 'lbf·ft',
  N·m: 'lbf·in',
  'N·m/s': 'lbf·in/s',
  'N·m/rad': 'lbf·in/rad',
  'N·m·s/rad': 'lbf·in·s/rad',
  'mN·m·s/rad': 'ozf·in·s/rad',
  'rad/(N·m)': 'rad/(lbf·in)',
  'rad/(N·m·s)': 'rad/(lbf·in·s)',
  'rad/(N·m·s²)': 'rad/(lbf·in·s²)',
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

/** The exponent of the contact law in a unit such as N/m^n. */
const withExponent = (unit: string, exponent: number) => unit.replace('^n', exponent === 1 ? '' : `^${exponent}`)

/** Whether a unit can be converted; one that cannot is shown as it is stored. */
export const knowsUnit = (unit: string) => unitSize(withExponent(unit, 1)) !== null

/** The unit in which a quantity is shown. `exponent` is n of the contact law, for stiffness of the form N/m^n. */
export function shownUnit(source: UnitSource, system: UnitSystem, exponent = 1): ShownUnit {
  const customary = source.shown ?? source.unit
  const wanted = (system === 'us' && US[customary]) || customary
  const unit = knowsUnit(wanted) ? wanted : source.unit
  const stored = withExponent(source.unit, exponent)
  const typed = (figure: number, text: string) => toStored(figure, text, stored)
  const others = () => OFFERED.filter((each) => typed(1, each) !== null)
  if (unit === '°F')
    return { symbol: '°F', toShown: (c) => tidy(c * 1.8 + 32), toSi: (f) => tidy((f - 32) / 1.8), typed, others }
  const symbol = withExponent(unit, exponent)
  const factor = factorOf(symbol, stored) ?? 1
  return { symbol, toShown: (si) => tidy(si / factor), toSi: (shown) => tidy(shown * factor), typed, others }
}

/** How many of the stored unit one of the other is; null: they do not measure the same. A swing a second is 2π rad/s. */
function factorOf(unit: string, stored: string): number | null {
  const turn = stored === 'rad/s' && /^[kM]?Hz$/.test(unit)
  const size = unitSize(unit)
  const own = unitSize(turn ? '1/s' : stored)
  return size && own && isAlike(size, own) ? (turn ? 2 * Math.PI : 1) * (size.factor / own.factor) : null
}

function toStored(figure: number, unit: string, stored: string): number | null {
  if (stored === '°C') return /^°?C$/.test(unit) ? figure : /^°?F$/.test(unit) ? tidy((figure - 32) / 1.8) : null
  const factor = factorOf(unit, stored)
  return factor === null ? null : tidy(figure * factor)
}

/** What is offered to a person who typed a unit that does not fit. */
const OFFERED = [
  ...[
    'µm',
    'mm',
    'cm',
    'm',
    'in',
    'g',
    'kg',
    'oz',
    'lb',
    'N',
    'kN',
    'lbf',
    'ms',
    's',
    'mA',
    'A',
    'mV',
    'V',
    '%',
    '°',
    'rad',
    'rev',
    'N·m',
    'mN·m',
    'lbf·in',
    'ozf·in',
  ],
  ...[
    'mm/s',
    'm/s',
    'in/s',
    'rad/s',
    'rev/min',
    'm/s²',
    'in/s²',
    'N/mm',
    'N/µm',
    'lbf/in',
    'Hz',
    'kHz',
    '1/s',
    'mΩ',
    'Ω',
    'mH',
    'µH',
    '°C',
    '°F',
  ],
]

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
  pressure: { unit: 'Pa', shown: 'MPa' },
  time: { unit: 's' },
  shortTime: { unit: 's', shown: 'ms' },
  frequency: { unit: '1/s' },
  angle: { unit: 'rad', shown: '°' },
  /** Of a spindle: its speed, what it turns with and against, what turns. */
  turningSpeed: { unit: 'rad/s', shown: 'rev/min' },
  spindleTorque: { unit: 'N·m' },
  turns: { unit: 'rad', shown: 'rev' },
  inertia: { unit: 'kg·m²', shown: 'g·cm²' },
  torqueRate: { unit: 'N·m/rad' },
  temperature: { unit: '°C' },
  ratio: { unit: '', shown: '%' },
  number: { unit: '' },
} satisfies Record<string, UnitSource>

export type Quantity = keyof typeof QUANTITIES

/** The unit in which results and charts show a quantity. */
export const quantityUnit = (quantity: Quantity, system: UnitSystem) => shownUnit(QUANTITIES[quantity], system)
