/**
 * Units as they stand in logs. A new one is one line: the unit as `unitSize` reads it, and its spellings; sizes are those of
 * `scenario/unit-text.ts` (SI brochure; NIST Special Publication 811 for inch, pound and ounce).
 */
import { isAlike, type UnitSize, unitSize } from '../../scenario/unit-text.ts'

/** First all that have a size. Where one spelling stands for several, the one that fits the channel is taken, else the first. */
const SIZED: [unit: string, spellings: string][] = [
  ['s', 's sec secs second seconds sek sekunde sekunden seconde secondes segundo segundos secondo secondi'],
  ['ms', 'ms msec msecs msek millis millisecond milliseconds millisekunden millisecondes milisegundos millisecondi'],
  ['µs', 'us µs μs usec µsec micros microsecond microseconds mikrosekunden'],
  ['1e-9 s', 'ns nsec nanoseconds'],
  ['min', 'min mins minute minutes minuten'],
  ['h', 'h hr hrs hour hours'],
  ['m', 'm meter meters metre metres mètre metros metri'],
  ['mm', 'mm millimeter millimeters millimetre millimetres'],
  ['cm', 'cm centimeter centimeters'],
  ['µm', 'um µm μm micron microns micrometer'],
  ['nm', 'nm'],
  ['in', 'in inch inches zoll pouce pouces "'],
  ['mil', 'mil mils thou'],
  ['ft', 'ft foot feet'],
  ['m/s', 'm/s mps m/sec m.s-1 ms^-1 m·s⁻¹'],
  ['mm/s', 'mm/s mmps mm/sec mm.s-1'],
  ['µm/s', 'um/s µm/s μm/s'],
  ['cm/s', 'cm/s'],
  ['m/min', 'm/min'],
  ['mm/min', 'mm/min'],
  ['in/s', 'in/s ips in/sec inch/s'],
  ['in/min', 'in/min ipm'],
  ['m/s²', 'm/s2 m/s² m/s^2'],
  ['mm/s²', 'mm/s2 mm/s² mm/s^2'],
  ['A', 'A amp amps ampere amperes ampère Arms A_rms Apk A_pk Aeff'],
  ['mA', 'mA milliamp milliamps milliampere mArms'],
  ['µA', 'uA µA μA'],
  ['V', 'V volt volts Vdc VDC'],
  ['mV', 'mV millivolt millivolts'],
  ['kV', 'kV'],
  ['N', 'N newton newtons'],
  ['kN', 'kN kilonewton'],
  ['mN', 'mN'],
  ['lbf', 'lbf lb lbs pound pounds'],
  ['ozf', 'ozf oz'],
  ['kgf', 'kgf kg kp'],
  ['gf', 'gf g gram grams'],
  ['N·m', 'Nm N·m N.m N*m N-m newtonmeter'],
  ['mN·m', 'mNm mN·m mN.m mN-m'],
  ['N·cm', 'Ncm N·cm N.cm'],
  ['lbf·in', 'lbfin lbf·in lbf.in lbf-in lb-in lb.in in-lb in.lb inlb in-lbf'],
  ['lbf·ft', 'lbf·ft lbf.ft lb-ft lb.ft ft-lb ft.lb ftlb ft-lbf'],
  ['ozf·in', 'ozin oz-in oz.in ozf·in ozf-in'],
  ['°C', '°C degC Cel celsius'],
  ['°F', '°F degF fahrenheit'],
  ['K', 'K kelvin'],
  ['Hz', 'Hz'],
  ['kHz', 'kHz'],
  ['W', 'W watt watts'],
  ['kW', 'kW'],
  ['Ω', 'Ω ohm ohms'],
]

/** Rotary ones: turns, or turns a second, of one of it; metres need the lead. */
const ROTARY: [unit: string, turns: number, rate: boolean, spellings: string][] = [
  ['rev', 1, false, 'rev revs turn turns r tour tours umdr U giri vueltas revolution revolutions'],
  ['rad', 1 / (2 * Math.PI), false, 'rad radian radians'],
  ['°', 1 / 360, false, '° º deg degs degree degrees grad'],
  [
    'rpm',
    1 / 60,
    true,
    'rpm r/min rev/min 1/min min-1 min^-1 min⁻¹ /min u/min U/min tr/min tours/min t/min t/mn giri/min umdr/min rot/min',
  ],
  ['rev/s', 1, true, 'rev/s rps r/s 1/s turns/s turn/s'],
  ['rad/s', 1 / (2 * Math.PI), true, 'rad/s rad/sec rads rad.s-1'],
  ['°/s', 1 / 360, true, '°/s deg/s deg/sec º/s'],
]

/** Without a size of their own. */
const BARE: [unit: string, spellings: string][] = [
  [
    'counts',
    'count counts cts ct cnt cnts inc incs incr ink inkr increment increments inkremente pulse pulses puls impulse pls step steps stp pt pts point points qc quad lsb digit digits raw dig adc enc ticks tick',
  ],
  ['counts/s', 'counts/s count/s cts/s cnt/s inc/s incr/s pulses/s steps/s step/s pps pt/s'],
  ['%', '% pct percent prozent percento pour-cent'],
  ['‰', '‰ permille 0.1% 0,1%'],
  ['', '- -- 1 none bool boolean logic n/a'],
]

export interface Unit {
  text: string
  size: UnitSize | null
  /** Turns, or turns a second, of one of it; null: no rotary unit. */
  turns: number | null
  rate: boolean
}

const sized = ([unit, spellings]: [string, string]): [Unit, string] => [
  { text: shownName(unit), size: sizeOf(unit), turns: null, rate: false },
  spellings,
]

/** Forces told as masses weigh so much, by standard gravity; a nanosecond has no name elsewhere. */
const GRAVITY = 9.80665
const OWN: Record<string, UnitSize> = {
  kgf: { factor: GRAVITY, powers: unitSize('N')!.powers },
  gf: { factor: GRAVITY / 1000, powers: unitSize('N')!.powers },
  '1e-9 s': { factor: 1e-9, powers: unitSize('s')!.powers },
}
const sizeOf = (unit: string) => OWN[unit] ?? unitSize(unit)
const shownName = (unit: string) => (unit === '1e-9 s' ? 'ns' : unit)

const TABLE: [Unit, string][] = [
  ...SIZED.map(sized),
  ...ROTARY.map(([text, turns, rate, spellings]): [Unit, string] => [{ text, size: null, turns, rate }, spellings]),
  ...BARE.map(([text, spellings]): [Unit, string] => [{ text, size: null, turns: null, rate: false }, spellings]),
]

const exact = new Map<string, Unit[]>()
const loose = new Map<string, Unit[]>()
for (const [unit, spellings] of TABLE)
  for (const spelling of spellings.split(' ')) {
    exact.set(spelling, [...(exact.get(spelling) ?? []), unit])
    loose.set(spelling.toLowerCase(), [...(loose.get(spelling.toLowerCase()) ?? []), unit])
  }

/** All that a spelling may mean, likeliest first; a capital letter counts where both are units. */
export function unitsSpelled(text: string): Unit[] {
  const spelling = text
    .trim()
    .replaceAll(/\s+/g, '')
    .replace(/^1\/(?=min|s$)/i, '1/')
  const known = exact.get(spelling) ?? []
  const others = (loose.get(spelling.toLowerCase()) ?? []).filter((unit) => !known.includes(unit))
  const all = [...known, ...others]
  if (all.length > 0 || spelling === '') return all
  const size = unitSize(spelling)
  return size ? [{ text: spelling, size, turns: null, rate: false }] : []
}

/** Whether a text can only be a unit: single letters count as such in their own case alone. */
export const isUnit = (text: string): boolean =>
  text.length === 1 ? exact.has(text) : exact.has(text) || loose.has(text.toLowerCase())

export const measures = (unit: Unit, si: string): boolean => {
  const wanted = unitSize(si)
  return unit.size !== null && wanted !== null && isAlike(unit.size, wanted)
}
