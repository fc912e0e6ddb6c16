/** Points and laws of scatter against published sequences, closed forms and the printed tables of capability. */
import { describe, expect, it } from 'vitest'
import { correlator } from '../../sim/ask/spread/correlate.ts'
import { normalShare } from '../../sim/ask/spread/distributions.ts'
import { latin } from '../../sim/ask/spread/hypercube.ts'
import { lawOfTolerance } from '../../sim/ask/spread/laws.ts'
import { pointsOf, type Sampling } from '../../sim/ask/spread/points.ts'
import { owen, sobol, sobolWord } from '../../sim/ask/spread/sobol.ts'
import { keyOf } from '../../sim/ask/spread/words.ts'

/** Mean square of what `of` gives in `repeats` independent draws, and its standard error as a share (of a normal law: √(2/n)). */
const meanSquare = (repeats: number, of: (repeat: number) => number) => ({
  value: Array.from({ length: repeats }, (_, repeat) => of(repeat) ** 2).reduce((a, b) => a + b, 0) / repeats,
  error: Math.sqrt(2 / repeats),
})

describe("Sobol' sequence, Joe and Kuo 2008, Gray-code order", () => {
  it('begins as printed', () => {
    const first = [
      [0, 0, 0],
      [0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25],
      [0.25, 0.75, 0.75],
      [0.375, 0.375, 0.625],
      [0.875, 0.875, 0.125],
      [0.625, 0.125, 0.875],
      [0.125, 0.625, 0.375],
      [0.1875, 0.3125, 0.9375],
    ]
    expect(first.map((_, k) => [...sobol(k, 3)])).toEqual(first)
  })

  it('goes on as scipy 1.17 has it (stats.qmc.Sobol), in far dimensions too', () => {
    const at = (index: number) => [3, 10, 40, 63, 100, 127].map((k) => sobol(index, 128)[k])
    expect(at(63)).toEqual([0.453125, 0.421875, 0.671875, 0.734375, 0.578125, 0.640625])
    expect(at(37)).toEqual([0.921875, 0.015625, 0.078125, 0.828125, 0.359375, 0.671875])
  })

  it('has the mean ½·(1 − 1/n) in every dimension (closed form)', () => {
    for (const n of [8, 16, 4096]) {
      const sums = new Float64Array(128)
      for (let k = 0; k < n; k++) for (const [d, x] of sobol(k, 128).entries()) sums[d]! += x
      // A dimension is balanced from as many points on as its polynomial has digits: all 128 from 2^10 on.
      const balanced = n === 4096 ? sums : sums.slice(0, 3)
      for (const sum of balanced) expect(sum / n).toBe(0.5 * (1 - 1 / n))
    }
  })
})

describe('scrambling after Owen 1997', () => {
  it.each([
    [8, 1.6276e-4, 4000],
    [64, 3.17891e-7, 4000],
    [1024, 7.76102e-11, 800],
  ])('mean of x over %i points: variance 1/(12n³) = %d (closed form)', (n, expected, repeats) => {
    const drawn = meanSquare(repeats, (repeat) => {
      let sum = 0
      for (let k = 0; k < n; k++) sum += owen(sobolWord(k, repeat % 7), keyOf(n, repeat))
      return sum / n - 0.5
    })
    expect(Math.abs(drawn.value / expected - 1)).toBeLessThan(3 * drawn.error)
  })
})

describe('Latin hypercubes', () => {
  const pairs = (repeat: number, size: number, slices: number) =>
    Array.from(
      { length: size * slices },
      (_, k) => [0, 1].map((d) => latin(keyOf(repeat, d), k, size, slices) - 0.5) as [number, number],
    )

  it.each([
    [10, 1, 1.66667e-4],
    [20, 5, 2 / (12 * 100 ** 3)],
  ])('mean of x + y, %i points in %i slices: variance d/(12n³) (closed form)', (size, slices, expected) => {
    const drawn = meanSquare(2000, (repeat) => {
      const points = pairs(repeat, size, slices)
      return points.reduce((sum, [x, y]) => sum + x + y, 0) / points.length
    })
    expect(Math.abs(drawn.value / expected - 1)).toBeLessThan(3 * drawn.error)
  })

  it('mean of a pure product, 10 points: 7.70069e-4, more than the 6.94444e-4 of random ones (closed form)', () => {
    const drawn = meanSquare(30_000, (repeat) => pairs(repeat, 10, 1).reduce((sum, [x, y]) => sum + x * y, 0) / 10)
    expect(Math.abs(drawn.value / 7.70069e-4 - 1)).toBeLessThan(3 * drawn.error)
    expect(drawn.value).toBeGreaterThan(6.94444e-4 * 1.04)
  })
})

describe('error of a mean as a study grows', () => {
  /** Variance of the mean of a smooth function with an interaction, between 60 studies. */
  function varianceOf(sampling: Sampling, samples: number): number {
    const means = Array.from({ length: 60 }, (_, seed) => {
      const points = pointsOf({ sampling, dimension: 4, seed })
      let sum = 0
      for (let k = 0; k < samples; k++) {
        const [a, b, c, d] = points(k) as unknown as [number, number, number, number]
        sum += (a + b / 2) * (1 + c) + d * d
      }
      return sum / samples
    })
    const mean = means.reduce((a, b) => a + b, 0) / means.length
    return means.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (means.length - 1)
  }

  it("is that of random points by a fifth of them at most, and falls faster than 1/N (Owen 1997), for Sobol' points", () => {
    const [random, few, many] = [varianceOf('random', 1000), varianceOf('sobol', 200), varianceOf('sobol', 2000)]
    expect(few).toBeLessThan(random) // with a fifth of the points
    // Ten times the points: 1/N would leave a tenth. A ratio of two variances of 59 degrees of freedom is good to a factor of 2.
    expect(many).toBeLessThan(few / 20)
  })

  it('is smaller than of random points in a hypercube as well', () => {
    expect(varianceOf('hypercube', 200)).toBeLessThan(varianceOf('random', 1000))
  })
})

describe('capability', () => {
  // Printed: 2700, 66 (at 1.33) or 63 (at 4/3), 6.8, 0.57 parts in a million outside both limits.
  it.each([
    [1, 1349.9],
    [1.33, 33.037],
    [4 / 3, 31.671],
    [1.5, 3.3977],
    [1.67, 0.27215],
    [5 / 3, 0.28665],
    [2, 0.00098659],
  ])('%d leaves %d in a million beyond one limit', (cpk, expected) => {
    const law = lawOfTolerance(0.3, cpk)
    if (law.law !== 'normal') throw new Error('not normal')
    expect((normalShare(-0.3 / law.sd) * 1e6) / expected).toBeCloseTo(1, 4)
  })
})

describe('pairs of a normal law', () => {
  // Spearman (6/π)·asin(ρ/2), Kendall (2/π)·asin ρ: Kruskal 1958.
  it.each([
    [0.3, 0.287564, 0.193973],
    [0.5, 0.482584, 0.333333],
    [0.8, 0.785939, 0.590334],
    [0.9, 0.891456, 0.712867],
  ])('of correlation %d have the rank correlations %d and %d', (correlation, spearman, kendall) => {
    const found = correlator(2, [{ a: 0, b: 1, correlation }])
    if (found.kind !== 'correlates') throw new Error('contradiction')
    const points = pointsOf({ sampling: 'sobol', dimension: 2, seed: 4 })
    const drawn = Array.from({ length: 4000 }, (_, k) => found.apply(points(k)) as unknown as [number, number])
    // Spearman's is the correlation of u and v themselves, whose variance is 1/12.
    const product = drawn.reduce((sum, [u, v]) => sum + (u - 0.5) * (v - 0.5), 0) / drawn.length
    expect(Math.abs(12 * product - spearman)).toBeLessThan(0.005)
    let agree = 0
    for (let k = 0; k + 1 < drawn.length; k += 1) {
      const [one, other] = [drawn[k]!, drawn[(k + drawn.length / 2) % drawn.length]!]
      agree += Math.sign((one[0] - other[0]) * (one[1] - other[1]))
    }
    // 4,000 pairs: standard error 1/√2000 at most.
    expect(Math.abs(agree / (drawn.length - 1) - kendall)).toBeLessThan(0.06)
  })
})
