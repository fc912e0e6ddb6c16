import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { knowsUnit, quantityUnit, shownUnit, type UnitSystem } from '../../sim/index.ts'
import { SCHEMAS } from '../../sim/scenario/index.ts'

type Node = Record<string, unknown>

function* quantities(node: Node): Generator<{ unit: string; shown?: string }> {
  if (typeof node.unit === 'string') yield node as { unit: string; shown?: string }
  const inner = [...Object.values((node.properties ?? {}) as Node), ...((node.anyOf as Node[]) ?? []), node.items]
  for (const next of inner) if (typeof next === 'object' && next !== null) yield* quantities(next as Node)
}

const all = Object.values(SCHEMAS).flatMap((schema) => [...quantities(schema as unknown as Node)])

describe('units', () => {
  it('knows every unit of the scenario format', () => {
    expect(all.length).toBeGreaterThan(150)
    const unknown = all.flatMap(({ unit, shown }) => [unit, shown ?? unit]).filter((unit) => !knowsUnit(unit))
    expect(unknown).toEqual([])
  })

  it('leaves nothing metric in US units, whether a quantity is read in a unit of its own or in that of the file', () => {
    for (const { unit, shown = unit } of all)
      for (const source of [{ unit }, { unit, shown }])
        expect(shownUnit(source, 'us').symbol, unit).not.toMatch(/(^|[^\p{L}])([mkµ]?N|[mkµ]?m|k?g|°C|K)(?![\p{L}])/u)
  })

  it('gives a value back after a conversion there and back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.constantFrom<UnitSystem>('si', 'us'),
        fc.constantFrom(1, 1.5),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((value) => value === 0 || Math.abs(value) > 1e-6),
        (source, system, exponent, value) => {
          const unit = shownUnit(source, system, exponent)
          const back = unit.toSi(unit.toShown(value))
          // Fahrenheit has an offset: what it costs is absolute.
          expect(Math.abs(back - value)).toBeLessThan(1e-11 * Math.abs(value) + 1e-10)
        },
      ),
    )
  })

  // NIST Special Publication 811 (2008), appendix B.8, factors for units listed alphabetically, to seven digits.
  it.each([
    ['pound-force to newton', { unit: 'N' }, 1, 4.448222],
    ['inch to metre', { unit: 'm', shown: 'mm' }, 1, 2.54e-2],
    ['mil (0.001 in) to metre', { unit: 'm', shown: 'µm' }, 1, 2.54e-5],
    ['pound to kilogram', { unit: 'kg' }, 1, 4.535924e-1],
    ['ounce (avoirdupois) to kilogram', { unit: 'kg', shown: 'g' }, 1, 2.834952e-2],
    ['pound-force per inch to newton per metre', { unit: 'N/m', shown: 'N/mm' }, 1, 1.751268e2],
    ['ounce-force inch to newton metre', { unit: 'N·m', shown: 'mN·m' }, 1, 7.061552e-3],
    ['inch per second to metre per second', { unit: 'm/s', shown: 'mm/s' }, 1, 2.54e-2],
    ['inch per second squared', { unit: 'm/s²' }, 1, 2.54e-2],
    ['degree Fahrenheit to degree Celsius', { unit: '°C' }, 212, 100],
  ])('%s', (_, source, us, si) => {
    expect(shownUnit(source, 'us').toSi(us) / si).toBeCloseTo(1, 6)
  })

  it('shows the SI multiple people read', () => {
    expect(shownUnit({ unit: 'm', shown: 'mm' }, 'si').toShown(0.07)).toBe(70)
    expect(shownUnit({ unit: 'rad/s', shown: 'Hz' }, 'si').toShown(2 * Math.PI)).toBeCloseTo(1, 12)
    expect(shownUnit({ unit: '1/s', shown: 'kHz' }, 'si').toShown(20000)).toBe(20)
    expect(quantityUnit('length', 'si').toSi(70.1)).toBe(0.0701)
  })

  it('lets the exponent of the contact law into the unit of stiffness', () => {
    const stiffness = { unit: 'N/m^n', shown: 'N/mm^n' }
    expect(shownUnit(stiffness, 'si', 1)).toMatchObject({ symbol: 'N/mm' })
    const hertz = shownUnit(stiffness, 'si', 1.5)
    expect(hertz.symbol).toBe('N/mm^1.5')
    expect(hertz.toSi(1)).toBeCloseTo(1000 ** 1.5, 6)
  })

  it('shows a quantity of an unknown unit as it is stored', () => {
    expect(shownUnit({ unit: 'cd', shown: 'mcd' }, 'us')).toMatchObject({ symbol: 'cd' })
    expect(shownUnit({ unit: 'cd', shown: 'mcd' }, 'us').toShown(3)).toBe(3)
  })
})
