/** How often an interval holds the truth, over 2,000 studies of a known share or mean, seeds 0 to 1,999. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalQuantile } from '../../../sim/ask/spread/distributions.ts'
import { exactInterval, meanInterval, shareInterval } from '../../../sim/ask/spread/intervals.ts'
import { pointsOf, SAMPLINGS, type Sampling, SCRAMBLINGS, scramblingOf } from '../../../sim/ask/spread/points.ts'

const STUDIES = 2000
type Fails = (at: Point) => boolean

/** Parts of two laws 0 < u < 1, and the same as standard normal numbers. */
interface Point {
  u: Float64Array
  z: Float64Array
}

/** Two normal quantities whose weighted sum is in its lower part; a corner of a square; islands without order; one quantity alone. */
const SHAPES: Record<string, (share: number) => Fails> = {
  edge: (share) => {
    const edge = normalQuantile(share) * Math.sqrt(1.25)
    return ({ z }) => z[0]! + 0.5 * z[1]! < edge
  },
  corner:
    (share) =>
    ({ u }) =>
      u[0]! < Math.sqrt(share) && u[1]! < Math.sqrt(share),
  islands:
    (share) =>
    ({ u }) =>
      (u[0]! * 37.3 + u[1]! * 51.7) % 1 < share,
  one:
    (share) =>
    ({ u }) =>
      u[0]! < share,
}

/** Figures of known mean: smooth, with a jump, with a long tail. Closed forms. */
const FIGURES: [(at: Point) => number, number][] = [
  [({ u }) => u[0]! * (1 + u[1]!), 0.75],
  [({ u }) => (u[0]! * u[1]! > 0.5 ? u[0]! : 0), 0.125],
  [({ u, z }) => z[0]! ** 2 * (1 + u[1]!), 1.5],
]

/** Percent of the studies whose interval holds the truth, by shape and share, and of each figure's mean. */
function coverage(sampling: Sampling, samples: number, shares: readonly number[]) {
  const cases = Object.entries(SHAPES).flatMap(([shape, of]) =>
    shares.map((share) => ({
      name: `${shape} ${share}`,
      share,
      fails: of(share),
      held: 0,
      known: new Map<string, number>(),
    })),
  )
  const means = FIGURES.map(([figure, truth]) => ({ figure, truth, held: 0 }))
  const sizes = new Array<number>(SCRAMBLINGS).fill(samples / SCRAMBLINGS)
  for (let seed = 0; seed < STUDIES; seed++) {
    const drawn = pointsOf({ sampling, dimension: 2, seed })
    const points = Array.from({ length: samples }, (_, k) => {
      const u = drawn(k)
      return { u, z: u.map(normalQuantile) }
    })
    const sums = (of: (at: Point) => number) =>
      points.reduce((list, point, k) => {
        list[scramblingOf(k)]! += of(point)
        return list
      }, new Array<number>(SCRAMBLINGS).fill(0))
    for (const each of cases) {
      const counts = sums((point) => (each.fails(point) ? 1 : 0)).sort((a, b) => a - b)
      const key = counts.join()
      if (!each.known.has(key)) {
        const { low, high } = shareInterval(sampling, counts, sizes)
        each.known.set(key, low <= each.share && each.share <= high ? 1 : 0)
      }
      each.held += each.known.get(key)!
    }
    for (const mean of means) {
      const { low, high } = meanInterval(sums(mean.figure), sizes)!
      if (low <= mean.truth && mean.truth <= high) mean.held++
    }
  }
  return {
    shares: Object.fromEntries(cases.map(({ name, held }) => [name, (100 * held) / STUDIES])),
    means: means.map(({ held }) => (100 * held) / STUDIES),
  }
}

describe('95 % intervals over repeated studies', () => {
  it.each([
    // Counted in all: 100 and 10, or 100 and 50. Where counts are few, or hardly scatter, discreteness makes more than 97 % of it.
    ['sobol', 200, [0.5, 0.05], ['one 0.5', 'one 0.05', 'edge 0.05', 'corner 0.05']],
    ['sobol', 1000, [0.1, 0.05], ['one 0.1', 'one 0.05', 'corner 0.05', 'corner 0.1']],
    ['hypercube', 200, [0.5, 0.05], ['one 0.5', 'one 0.05', 'edge 0.05']],
    ['random', 200, [0.5, 0.05], []],
  ] as const)(
    '%s, %i samples: hold the truth as often as they say, or more where counts are coarse',
    (sampling, samples, shares, coarse) => {
      const found = coverage(sampling, samples, shares)
      for (const [name, held] of Object.entries(found.shares)) {
        // Standard error of the measurement itself: 0.5 %.
        expect(held, name).toBeGreaterThan(92.5)
        if (!(coarse as readonly string[]).includes(name)) expect(held, name).toBeLessThan(97.5)
      }
      for (const held of found.means) expect(Math.abs(held - 95)).toBeLessThan(2.5)
    },
  )
})

const counted = fc
  .integer({ min: 1, max: 60 })
  .chain((size) =>
    fc.tuple(fc.array(fc.integer({ min: 0, max: size }), { minLength: 1, maxLength: SCRAMBLINGS }), fc.constant(size)),
  )

describe('an interval', () => {
  it('has a width, holds what was counted, stays in 0 … 1 and within the exact one', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SAMPLINGS), counted, (sampling, [counts, size]) => {
        const sum = counts.reduce((a, b) => a + b, 0)
        const share = sum / (size * counts.length)
        const exact = exactInterval(sum, size * counts.length)
        const { low, high } = shareInterval(
          sampling,
          counts,
          counts.map(() => size),
        )
        expect(high).toBeGreaterThan(low)
        expect(low).toBeGreaterThanOrEqual(exact.low)
        expect(high).toBeLessThanOrEqual(exact.high)
        expect(low).toBeLessThanOrEqual(share)
        expect(high).toBeGreaterThanOrEqual(share)
      }),
      { numRuns: 300 },
    )
  })

  it('of scramblings that agree is a quarter of a count of each wide, either way', () => {
    const { low, high } = shareInterval('sobol', new Array(10).fill(50), new Array(10).fill(100))
    expect((high - low) / 2).toBeGreaterThan(0.0022)
    expect((high - low) / 2).toBeLessThan(0.0026)
  })

  it('of nothing or all is the exact one', () => {
    expect(shareInterval('sobol', [0, 0], [100, 100])).toEqual(exactInterval(0, 200))
    expect(shareInterval('hypercube', [100, 100], [100, 100])).toEqual(exactInterval(200, 200))
  })

  it('takes scramblings of other sizes, and none that is still empty', () => {
    const full = shareInterval('sobol', [3, 5, 4], [20, 20, 20])
    expect(shareInterval('sobol', [3, 5, 4, 0], [20, 20, 20, 0])).toEqual(full)
    expect(meanInterval([20, 44, 0], [10, 20, 0])).toEqual(meanInterval([20, 44], [10, 20]))
  })

  it('of a mean is not told where nothing scatters', () => {
    expect(meanInterval([30], [10])).toBeNull()
    expect(meanInterval([30, 30, 30], [10, 10, 10])).toBeNull()
  })
})
