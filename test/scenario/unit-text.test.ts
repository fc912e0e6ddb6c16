import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shownUnit } from '../../sim/index.ts'
import { unitSize } from '../../sim/scenario/unit-text.ts'

const FORCE = { unit: 'N' }
const LENGTH = { unit: 'm', shown: 'mm' }

describe('a unit that was typed', () => {
  // Inch and pound: NIST Special Publication 811 (2008), appendix B.8; prefixes: BIPM, SI brochure, table 7; the others by definition.
  it.each([
    [LENGTH, 11, 'cm', 0.11],
    [LENGTH, 4.5, 'in', 0.1143],
    [LENGTH, 1, 'ft', 0.3048],
    [LENGTH, 3, 'mil', 7.62e-5],
    [LENGTH, 250, 'um', 2.5e-4],
    [FORCE, 0.2, 'kN', 200],
    [FORCE, 1, 'lbf', 4.4482216152605],
    [{ unit: 'kg', shown: 'g' }, 2, 'lb', 0.90718474],
    [{ unit: 'N/m', shown: 'N/mm' }, 2, 'kN/mm', 2e6],
    [{ unit: 'N/m', shown: 'N/mm' }, 1, 'lbf/in', 4.4482216152605 / 0.0254],
    [{ unit: 'N·m' }, 1, 'ozf·in', 7.06155181421604e-3],
    [{ unit: 'N·m' }, 1, 'N m', 1],
    [{ unit: 'A/(m·s)' }, 2, 'A/(mm s)', 2000],
    [{ unit: 'A·s/m' }, 2, 'A*s/m', 2],
    [{ unit: 'm/s²' }, 10, 'm/s^2', 10],
    [{ unit: 'm/s²' }, 10, 'm/s/s', 10],
    [{ unit: 's' }, 1.5, 'min', 90],
    [{ unit: 'rad', shown: '°' }, 180, 'deg', Math.PI],
    [{ unit: 'rad/s', shown: 'Hz' }, 2, 'kHz', 4000 * Math.PI],
    [{ unit: '1/s', shown: 'kHz' }, 20, 'Hz', 20],
    [{ unit: '', shown: '%' }, 45, '%', 0.45],
    [{ unit: '°C' }, 212, '°F', 100],
    [{ unit: '°C' }, 25, 'C', 25],
    [{ unit: 'Ω' }, 300, 'mohm', 0.3],
  ])('%o: %d %s', (source, figure, unit, si) => {
    expect(shownUnit(source, 'si').typed(figure, unit)! / si).toBeCloseTo(1, 11)
  })

  it('follows the exponent of the contact law', () => {
    const stiffness = shownUnit({ unit: 'N/m^n', shown: 'N/mm^n' }, 'si', 1.5)
    expect(stiffness.typed(1, 'N/mm^1.5')! / 1000 ** 1.5).toBeCloseTo(1, 11)
    expect(stiffness.typed(1, 'N/mm¹·⁵')).toBe(stiffness.typed(1, stiffness.symbol))
    expect(stiffness.typed(1, 'N/mm')).toBeNull()
  })

  it.each([
    [LENGTH, 'kg'],
    [LENGTH, 'furlong'],
    [LENGTH, 'm²'],
    [LENGTH, '1/m'],
    [LENGTH, 'kin'],
    [FORCE, 'lb'],
    [FORCE, 'N/'],
    [{ unit: 'rad/s' }, '1/s'],
    [{ unit: '1/s' }, 'rad/s'],
    [{ unit: 'N·m' }, 'N/m'],
    [{ unit: '°C' }, 'K'],
    [{ unit: '' }, 'N'],
    [{ unit: 'm/s' }, 'toString'],
  ])('of %o, %s is refused', (source, unit) => {
    expect(shownUnit(source, 'si').typed(1, unit)).toBeNull()
  })

  it('offers units that fit', () => {
    expect(shownUnit(LENGTH, 'si').others()).toEqual(['µm', 'mm', 'cm', 'm', 'in'])
    expect(shownUnit(FORCE, 'us').others()).toEqual(['N', 'kN', 'lbf'])
    expect(shownUnit({ unit: 'kg·m²' }, 'si').others()).toEqual([])
  })

  it('takes any text without failing', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'kmNs/·*()^²⁻1. °%') }), (text) => {
        const size = unitSize(text)
        return size === null || size.factor >= 0
      }),
    )
  })
})
