import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseNumber } from '../../app/ui/number.ts'
import { formatFigure, formatPlain, NO_FIGURE, withUnit } from '../../sim/index.ts'

describe('figures', () => {
  it.each([
    [52, '52.0'],
    [0.4123, '0.412'],
    [-2.7449, '−2.74'],
    [999.6, '1000'],
    [12345, '12\u202f300'],
    [123456.7, '123\u202f000'],
    [0.000123456, '0.000123'],
    [0, '0'],
    [-0, '0'],
    [1.5e9, '1.50\u202f×\u202f10⁹'],
    [-2.5e-7, '−2.50\u202f×\u202f10⁻⁷'],
  ])('%d reads %s', (value, text) => {
    expect(formatFigure(value)).toBe(text)
  })

  it('writes a dash where there is no figure', () => {
    for (const none of [null, undefined, Number.NaN, Number.POSITIVE_INFINITY])
      expect(formatFigure(none)).toBe(NO_FIGURE)
  })

  it('keeps typed figures plain', () => {
    expect(formatPlain(50)).toBe('50')
    expect(formatPlain(1.25)).toBe('1.25')
    expect(formatPlain(20000)).toBe('20\u202f000')
    expect(formatPlain(100)).toBe('100')
    expect(formatPlain(2 / 3)).toBe('0.666667')
    expect(formatPlain(-1234567)).toBe('−1\u202f234\u202f570')
  })

  it('can be read back to the digits shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e12, max: 1e12, noNaN: true }),
        fc.integer({ min: 2, max: 6 }),
        (value, digits) => {
          const read = parseNumber(formatFigure(value, digits))
          expect(read).toMatchObject({ ok: true })
          if (read.ok)
            expect(Math.abs(read.value - value)).toBeLessThanOrEqual(0.5001 * 10 ** (1 - digits) * Math.abs(value))
        },
      ),
    )
  })

  it('sets the unit behind the figure', () => {
    expect(withUnit('52.0', 'N')).toBe('52.0\u00a0N')
    expect(withUnit('15', '°')).toBe('15°')
    expect(withUnit(NO_FIGURE, 'N')).toBe(NO_FIGURE)
  })
})
