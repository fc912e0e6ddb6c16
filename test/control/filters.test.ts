import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { smoothing } from '../../sim/control/filters.ts'
import { derivativeOf, lowPassOf } from './support.ts'

/** The smallest number that IEEE 754 keeps with all its digits (binary64, table 3.5 of the standard): 2^−1022. */
const SMALLEST_NORMAL = 2 ** -1022

describe('smoothing', () => {
  it('is the backward Euler weight: 0.2 for a time constant of 2 ms sampled every 0.5 ms (closed form)', () => {
    expect(smoothing(2e-3, 5e-4)).toBeCloseTo(0.2, 12)
    expect(smoothing(0, 5e-4)).toBe(1)
  })
})

describe('LowPass', () => {
  it('answers a step with 1 − 0.8ⁿ', () => {
    const filter = lowPassOf({ timeConstant: 2e-3, period: 5e-4 })
    for (let n = 1; n <= 40; n++) expect(filter.tick(1)).toBeCloseTo(1 - 0.8 ** n, 12)
  })

  it('comes to 1 − 1/e after its time constant when sampled finely', () => {
    const filter = lowPassOf({ timeConstant: 2e-3, period: 1e-7 })
    for (let n = 0; n < 20_000; n++) filter.tick(1)
    expect(filter.state.value).toBeCloseTo(1 - Math.exp(-1), 4)
  })

  it('passes everything with a time constant of 0 and never leaves the range of its samples', () => {
    const samples = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 })
    fc.assert(
      fc.property(samples, fc.double({ min: 0, max: 1, noNaN: true }), (list, timeConstant) => {
        const filter = lowPassOf({ timeConstant, period: 1e-3 })
        const through = lowPassOf({ timeConstant: 0, period: 1e-3 })
        const bound = Math.max(...list.map(Math.abs)) * (1 + 1e-12)
        for (const sample of list) {
          expect(Math.abs(filter.tick(sample))).toBeLessThanOrEqual(bound)
          expect(through.tick(sample)).toBeCloseTo(sample, 8)
        }
      }),
    )
  })

  it('comes to rest, and not among the numbers that a processor is slow with', () => {
    const filter = lowPassOf({ timeConstant: 2e-3, period: 5e-4 })
    filter.tick(1)
    for (let n = 0; n < 5000; n++) {
      const value = filter.tick(0)
      expect(value === 0 || value >= SMALLEST_NORMAL, `${value} after ${n} samples`).toBe(true)
    }
    expect(filter.state.value).toBe(0)
  })

  it('starts again from 0 after a reset', () => {
    const filter = lowPassOf({ timeConstant: 1e-2, period: 1e-3 })
    filter.tick(5)
    filter.reset()
    expect(filter.state.value).toBe(0)
  })
})

describe('FilteredDerivative', () => {
  it('finds the slope of a straight line, whatever its height', () => {
    const derivative = derivativeOf({ timeConstant: 1e-3, period: 1e-4 })
    for (let n = 0; n < 400; n++) derivative.tick(7 + 3e-4 * n)
    expect(derivative.state.value).toBeCloseTo(3, 9)
  })

  it('without a filter is the difference of two samples over the period', () => {
    const derivative = derivativeOf({ timeConstant: 0, period: 0.5 })
    expect([4, 5, 3].map((sample) => derivative.tick(sample))).toEqual([0, 2, -4])
  })

  it('comes to rest behind a signal that stands still', () => {
    const derivative = derivativeOf({ timeConstant: 2e-3, period: 5e-4 })
    for (let n = 0; n < 10; n++) derivative.tick(3 * n)
    for (let n = 0; n < 5000; n++) {
      const value = derivative.tick(30)
      expect(value === 0 || value >= SMALLEST_NORMAL, `${value} after ${n} samples`).toBe(true)
    }
    expect(derivative.state.value).toBe(0)
  })

  it('gives no spike at the first sample, nor at the first after a reset', () => {
    const derivative = derivativeOf({ timeConstant: 0, period: 0.5 })
    expect(derivative.tick(100)).toBe(0)
    derivative.tick(101)
    derivative.reset()
    expect(derivative.tick(-100)).toBe(0)
  })
})
