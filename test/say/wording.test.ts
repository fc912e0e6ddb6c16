import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseNumber } from '../../app/ui/number.ts'
import { inPlainSpaces, type Quantity, quantityUnit, type UnitSystem, wordingOf } from '../../sim/index.ts'
import { textIn } from '../../sim/say/text.ts'

// NIST Special Publication 811 (2008), appendix B.8; what is not listed there is a product or quotient of what is.
const US: Partial<Record<Quantity, [si: number, text: string]>> = {
  force: [4.448222, '1 lbf'],
  forceRate: [4.448222, '1 lbf/s'],
  torque: [0.07061552, '10 ozf·in'],
  torqueConstant: [0.07061552, '10 ozf·in/A'],
  stiffness: [175.1268, '1 lbf/in'],
  hardStiffness: [175.1268e3, '1000 lbf/in'],
  length: [0.0254, '1 in'],
  smallLength: [25.4e-6, '1 mil'],
  speed: [0.0254, '1 in/s'],
  pressure: [6894757.293168361, '1000 psi'],
  acceleration: [9.80665, '386 in/s²'],
  mass: [0.02834952, '1 oz'],
  movingMass: [0.4535924, '1 lb'],
  temperature: [100, '212 °F'],
  spindleTorque: [0.1129848, '1 lbf·in'],
  torqueRate: [0.1129848, '1 lbf·in/rad'],
  inertia: [0.02834952 * 0.0254 ** 2, '1 oz·in²'],
}

const SI: Record<Quantity, [si: number, text: string]> = {
  force: [52.04, '52 N'],
  forceRate: [1234, '1230 N/s'],
  torque: [0.0123, '12.3 mN·m'],
  torqueConstant: [0.0123, '12.3 mN·m/A'],
  stiffness: [12e3, '12 N/mm'],
  hardStiffness: [12e6, '12 N/µm'],
  length: [0.025, '25 mm'],
  smallLength: [1e-6, '1 µm'],
  speed: [0.05, '50 mm/s'],
  acceleration: [9.80665, '9.81 m/s²'],
  mass: [0.7, '700 g'],
  movingMass: [0.7, '0.7 kg'],
  current: [1.5, '1.5 A'],
  smallCurrent: [0.0015, '1.5 mA'],
  voltage: [24, '24 V'],
  resistance: [0.5, '0.5 Ω'],
  inductance: [0.001, '1 mH'],
  power: [3.456, '3.46 W'],
  pressure: [48.75e6, '48.8 MPa'],
  time: [0.4, '0.400 s'],
  shortTime: [0.0123, '12.3 ms'],
  frequency: [20000, '20000 1/s'],
  angle: [Math.PI / 4, '45°'],
  turningSpeed: [10 * Math.PI, '300 rev/min'],
  spindleTorque: [1.234, '1.23 N·m'],
  turns: [3 * Math.PI, '1.5 rev'],
  inertia: [0.00012, '1200 g·cm²'],
  torqueRate: [2.5, '2.5 N·m/rad'],
  temperature: [60, '60 °C'],
  ratio: [0.1234, '12.3 %'],
  number: [0.1234, '0.123'],
}

const NAMES = Object.keys(SI) as Quantity[]
const plain = (text: string) => inPlainSpaces(text)

describe('a wording', () => {
  it.each(NAMES)('writes %s in either system', (name) => {
    const [si, text] = SI[name]
    expect(plain(wordingOf('si')[name](si))).toBe(text)
    const [value, us] = US[name] ?? [si, text]
    expect(plain(wordingOf('us')[name](value))).toBe(us)
  })

  it('writes a swing in the unit of the loops with Hz beside it, for everybody alike', () => {
    for (const system of ['si', 'us'] as const)
      expect(plain(wordingOf(system).swing(100 * Math.PI))).toBe('314 rad/s (50 Hz)') // 2π rad a swing, closed form
  })

  it('rounds to three significant digits: what is written reads back within half a unit of the third', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...NAMES),
        fc.constantFrom<UnitSystem>('si', 'us'),
        fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((value) => Math.abs(value) > 1e-9),
        (name, system, si) => {
          const { symbol, toShown } = quantityUnit(name, system)
          const read = parseNumber(wordingOf(system)[name](si), symbol)
          expect(read).toMatchObject({ ok: true })
          if (!read.ok) return
          const shown = toShown(si)
          expect(Math.abs(read.value - shown)).toBeLessThanOrEqual(0.50001e-2 * Math.abs(shown))
          expect(Number(shown.toPrecision(3))).toBeCloseTo(
            read.value,
            -Math.floor(Math.log10(Math.abs(shown) || 1)) + 3,
          )
        },
      ),
    )
  })

  it('writes zero as 0, less than zero with a minus sign, and keeps figure and unit on one line', () => {
    expect(wordingOf('si').force(0)).toBe('0\u00a0N')
    expect(wordingOf('si').force(-2.5)).toBe('\u22122.5\u00a0N')
    expect(wordingOf('si').force(20000)).toBe('20\u202f000\u00a0N')
  })

  it('lets the exponent of the contact law into the unit, raised', () => {
    const source = { unit: 'N/m^n', shown: 'N/mm^n' }
    expect(plain(wordingOf('si').of(source, 1000 ** 1.5, 1.5))).toBe('1 N/mm¹·⁵')
    expect(plain(wordingOf('si').of(source, 1000, 1))).toBe('1 N/mm')
  })
})

describe('a text with quantities', () => {
  it('has them in the units of the reader', () => {
    const text = 'below {0.0001 m/s|mm/s}, at {25 °C} or {-3e-2 s}'
    expect(plain(textIn(text, wordingOf('si')))).toBe('below 0.1 mm/s, at 25 °C or −0.03 s')
    expect(plain(textIn(text, wordingOf('us')))).toBe('below 0.00394 in/s, at 77 °F or −0.03 s')
    expect(textIn('as it is {name}', wordingOf('us'))).toBe('as it is {name}')
  })
})
