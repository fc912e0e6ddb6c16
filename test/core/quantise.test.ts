import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { quantise } from '../../sim/core/quantise.ts'

const value = fc.double({ min: -1, max: 1, noNaN: true })
const step = fc.double({ min: 1e-6, max: 0.1, noNaN: true })

describe('quantise', () => {
  it('gives the nearest multiple of the step', () => {
    fc.assert(
      fc.property(value, step, (x, q) => {
        const rounded = quantise(x, q)
        expect(Math.abs(rounded - x)).toBeLessThanOrEqual(0.5 * q * (1 + 1e-9))
        expect(Math.abs(rounded / q - Math.round(rounded / q))).toBeLessThan(1e-9)
      }),
    )
  })

  it('never falls while the value grows', () => {
    fc.assert(
      fc.property(value, value, step, (a, b, q) => {
        expect(quantise(Math.max(a, b), q)).toBeGreaterThanOrEqual(quantise(Math.min(a, b), q))
      }),
    )
  })

  it('leaves the value where there is no step, and NaN as it is', () => {
    expect(quantise(0.123456789, 0)).toBe(0.123456789)
    expect(quantise(Number.NaN, 0.1)).toBeNaN()
  })
})
