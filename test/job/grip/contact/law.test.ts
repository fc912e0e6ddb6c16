import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lawOf } from '../../../../sim/job/grip/contact/laws.ts'

const log = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map((value) => Math.exp(value))

describe.each([1, 1.001, 1.25, 1.5, 1.8, 2])('contact law with exponent %d', (exponent) => {
  const law = lawOf(exponent)

  it('is the power of the flattening', () => {
    fc.assert(
      fc.property(log(1e-9, 1), (e) => {
        expect(law.shape(e) / e ** exponent).toBeCloseTo(1, 12)
      }),
    )
    expect(law.shape(0)).toBe(0)
  })

  it('has the slope of its shape', () => {
    fc.assert(
      fc.property(log(1e-8, 0.1), (e) => {
        const h = 1e-4 * e
        expect((law.shape(e + h) - law.shape(e - h)) / (2 * h) / law.slope(e)).toBeCloseTo(1, 6)
      }),
    )
  })

  it('finds the flattening of a value', () => {
    fc.assert(
      fc.property(log(1e-15, 1e6), (value) => {
        expect(law.shape(law.inverse(value)) / value).toBeCloseTo(1, 10)
      }),
    )
  })

  it('shares a load between part and pad, also from a guess a million times too small or too large', () => {
    const factor = log(1e-6, 1e6)
    fc.assert(
      fc.property(log(10, 1e13), log(100, 1e9), log(1e-6, 1e6), factor, (k, pad, load, wrong) => {
        const e = law.balance(k, pad, load, 0)
        expect(e).toBeGreaterThan(0)
        expect((k * law.shape(e) + pad * e) / load).toBeCloseTo(1, 9)
        expect(law.balance(k, pad, load, wrong * e) / e).toBeCloseTo(1, 9)
      }),
    )
  })
})

describe('lawOf', () => {
  it('refuses an exponent for which there is no law', () => {
    for (const exponent of [0.99, 2.01, Number.NaN])
      expect(() => lawOf(exponent)).toThrow(new RangeError('no contact law with this exponent'))
  })
})
