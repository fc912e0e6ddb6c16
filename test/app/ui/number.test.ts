import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseNumber, roundTo, splitUnit, stepNumber } from '../../../app/ui/number.ts'

describe('reading a number', () => {
  it.each([
    ['1.2e3', 1200],
    ['1,5', 1.5],
    ['0,125', 0.125],
    ['−3', -3],
    ['12 000', 12000],
    ['12\u202f000.5', 12000.5],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234,567', 1234567],
    ['.5', 0.5],
    ['5.', 5],
    ['+7', 7],
    ['1.2 × 10³', 1200],
    ['2×10⁻⁴', 2e-4],
    ['3 x 10^-2', 0.03],
  ])('%s', (text, value) => {
    expect(parseNumber(text)).toEqual({ ok: true, value })
  })

  it.each([
    ['11 cm', '11', 'cm'],
    ['4.5in', '4.5', 'in'],
    ['0.2 kN', '0.2', 'kN'],
    ['1e3 N', '1e3', 'N'],
    ['1.2 × 10³ N/mm', '1.2 × 10³', 'N/mm'],
    ['12 000 1/s', '12 000', '1/s'],
    ['-5 °C', '-5', '°C'],
    ['5. %', '5.', '%'],
    ['2e-3', '2e-3', ''],
    ['heavy', 'heavy', ''],
  ])('%s has a unit behind it', (text, figure, unit) => {
    expect(splitUnit(text)).toEqual({ figure, unit })
  })

  it('takes the unit along', () => {
    expect(parseNumber('50 mm/s', 'mm/s')).toEqual({ ok: true, value: 50 })
    expect(parseNumber('50 N', 'mm/s')).toMatchObject({ ok: false })
  })

  it.each(['', 'abc', '1.2.3', '--4', '1e', 'NaN', 'Infinity', '0x10', '1,2,3', '1e999'])(
    'refuses %j with a reason',
    (text) => {
      const read = parseNumber(text)
      expect(read.ok).toBe(false)
      if (!read.ok) expect(read.why.length).toBeGreaterThan(10)
    },
  )

  it('refuses a comma that can mean two numbers', () => {
    expect(parseNumber('1,234')).toEqual({ ok: false, why: expect.stringContaining('1.234 or 1234') })
  })

  it('reads back what the language prints', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const read = parseNumber(String(value))
        expect(read.ok && read.value === value).toBe(true)
      }),
    )
  })
})

describe('stepping', () => {
  it.each([
    [50, 1, 51],
    [50, -1, 49],
    [1.2, 1, 1.3],
    [0.00035, 1, 0.00036],
    [100, -1, 99],
    [99, 1, 100],
    [9.9, 1, 10],
    [-50, 1, -49],
    [51.4, 1, 52],
    [51.4, -1, 51],
    [50, 10, 60],
  ])('%d by %d is %d', (value, count, next) => {
    expect(stepNumber(value, count, 1e-9)).toBe(next)
  })

  it('leaves zero by the smallest step and comes back', () => {
    expect(stepNumber(0, 1, 0.01)).toBe(0.01)
    expect(stepNumber(0.01, -1, 0.01)).toBe(0)
  })

  it('moves by 1 % to 10 % of the value', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
        const next = stepNumber(value, 1, 1e-12)
        expect(next).toBeGreaterThan(value)
        expect(next / value).toBeLessThanOrEqual(1.1 + 1e-9)
      }),
    )
  })

  it('rounds to the power of ten below the grain', () => {
    expect(roundTo(51.437, 0.7)).toBe(51.4)
    expect(roundTo(51.437, 3)).toBe(51)
  })
})
