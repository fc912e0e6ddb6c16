/** Limits of shares and means against published tables and closed forms. */
import { describe, expect, it } from 'vitest'
import { studentQuantile } from '../../sim/ask/spread/distributions.ts'
import { exactInterval, exactLower, exactUpper, meanInterval } from '../../sim/ask/spread/intervals.ts'

describe('exact limits, Clopper and Pearson 1934 (each checked by the binomial tail at the limit)', () => {
  it.each([
    [0, 10, 0, 0.3084971],
    [0, 1000, 0, 0.003682084],
    [1, 100, 0.000253146, 0.05445939],
    [5, 20, 0.08657147, 0.4910459],
  ])('%i of %i: %d to %d', (k, n, low, high) => {
    const found = exactInterval(k, n)
    expect(found.low).toBeCloseTo(low, 8)
    expect(found.high).toBeCloseTo(high, 7)
    // What did not fail held: the limits mirror.
    expect(exactInterval(n - k, n).low).toBeCloseTo(1 - high, 7)
  })

  it.each([
    [0, 10, 0.2588656],
    [0, 1000, 0.00299125],
    [1, 100, 0.04655981],
    [5, 20, 0.4555824],
    [5, 100_000, 1.051275e-4],
  ])('%i of %i: at most %d, one-sided', (k, n, high) => {
    expect(exactUpper(k, n) / high).toBeCloseTo(1, 6)
    expect(exactLower(n - k, n)).toBeCloseTo(1 - high, 7)
  })

  it.each([
    [0.95, 0.95, 59],
    [0.9, 0.9, 22],
    [0.95, 0.99, 299],
    [0.95, 0.999, 2995],
    [0.99, 0.99, 459],
  ])('confidence %d of reliability %d takes %i runs without a failure (Wilks)', (confidence, reliability, runs) => {
    expect(exactUpper(0, runs, confidence)).toBeLessThanOrEqual(1 - reliability)
    expect(exactUpper(0, runs - 1, confidence)).toBeGreaterThan(1 - reliability)
  })

  it('hold the truth as often as the binomial law has it (closed form)', () => {
    // Discreteness: never below 95 %, and well above it for small counts. The last three by whole numbers alone, and by a library.
    for (const [n, share, expected] of [
      [20, 0.3, 0.97522],
      [20, 0.05, 0.9841],
      [100, 0.01, 0.98163],
      [1000, 0.5, 0.953709],
      [1000, 0.1, 0.954907],
      [1000, 0.01, 0.976095],
    ] as const) {
      let held = 0
      let chance = (1 - share) ** n
      for (let k = 0; k <= n; k++) {
        const { low, high } = exactInterval(k, n)
        if (low <= share && share <= high) held += chance
        chance *= ((n - k) / (k + 1)) * (share / (1 - share))
      }
      expect(held).toBeCloseTo(expected, 4)
    }
  })
})

describe("Student's factors", () => {
  it.each([
    [5, 2.776445],
    [10, 2.262157],
    [30, 2.04523],
    [100, 1.984217],
  ])('of %i groups: %d (table)', (n, factor) => {
    expect(studentQuantile(0.975, n - 1)).toBeCloseTo(factor, 5)
    // Groups 1 … n of one sample: mean (n+1)/2, standard deviation √(n(n+1)/12).
    const { low, high } = meanInterval(
      Array.from({ length: n }, (_, k) => k + 1),
      new Array(n).fill(1),
    )!
    expect((low + high) / 2).toBeCloseTo((n + 1) / 2, 10)
    expect((high - low) / 2).toBeCloseTo(factor * Math.sqrt((n + 1) / 12), 5)
  })
})
