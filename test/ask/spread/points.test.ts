import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { latin } from '../../../sim/ask/spread/hypercube.ts'
import { BATCH, pointsOf, SAMPLINGS, SCRAMBLINGS, scramblingOf } from '../../../sim/ask/spread/points.ts'
import { MOST_DIMENSIONS, owen, sobolWord } from '../../../sim/ask/spread/sobol.ts'
import { arranged, keyOf } from '../../../sim/ask/spread/words.ts'

const sampling = fc.constantFrom(...SAMPLINGS)
const seed = fc.integer({ min: 0, max: 2 ** 40 })
const index = fc.integer({ min: 0, max: 1e9 })
const range = (count: number) => Array.from({ length: count }, (_, k) => k)

describe('a sample', () => {
  it('is the same in whatever order it is asked, and whatever varies besides', () => {
    fc.assert(
      fc.property(sampling, seed, fc.array(index, { minLength: 1, maxLength: 20 }), (sampling, seed, indices) => {
        const points = pointsOf({ sampling, dimension: 4, seed })
        const there = indices.map(points)
        const back = [...indices].reverse().map(pointsOf({ sampling, dimension: 7, seed }))
        expect(back.reverse().map((point) => point.slice(0, 4))).toEqual(there)
      }),
    )
  })

  it('lies inside the open interval', () => {
    fc.assert(
      fc.property(sampling, seed, index, (sampling, seed, index) => {
        for (const u of pointsOf({ sampling, dimension: 9, seed })(index)) expect(u > 0 && u < 1).toBe(true)
      }),
    )
  })

  it('is these bits on every machine', () => {
    // From the simulator itself: it guards what studies already written were drawn from.
    const drawn = SAMPLINGS.map((sampling) => [...pointsOf({ sampling, dimension: 2, seed: 2026 })(4321)])
    expect(drawn).toMatchInlineSnapshot(`
      [
        [
          0.881826483993791,
          0.9240997895831242,
        ],
        [
          0.577199925474124,
          0.024132764296373354,
        ],
        [
          0.14436794666107744,
          0.9617143798386678,
        ],
      ]
    `)
  })

  it('belongs to another seed, another scrambling, another dimension with nothing in common', () => {
    for (const sampling of SAMPLINGS) {
      const seen = range(40).flatMap((seed) =>
        range(SCRAMBLINGS).flatMap((batch) => [...pointsOf({ sampling, dimension: 6, seed })(batch * BATCH)]),
      )
      expect(new Set(seen).size).toBe(seen.length)
    }
  })

  it('goes round the scramblings in batches', () => {
    expect(range(12).map((batch) => scramblingOf(batch * BATCH + 19))).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 0, 1])
  })

  it('has no more dimensions than the sequence', () => {
    const dimension = MOST_DIMENSIONS
    expect(pointsOf({ sampling: 'sobol', dimension, seed: 1 })(5)).toHaveLength(dimension)
    expect(() => pointsOf({ sampling: 'sobol', dimension: dimension + 1, seed: 1 })).toThrow(RangeError)
    expect(pointsOf({ sampling: 'random', dimension: dimension + 1, seed: 1 })(5)).toHaveLength(dimension + 1)
  })
})

/** Largest share of draws by which the counts of equal cells differ from what is expected, in standard deviations. */
function worstCell(cells: number, draws: number, cellOf: (draw: number) => number): number {
  const counts = new Array<number>(cells).fill(0)
  for (let draw = 0; draw < draws; draw++) counts[cellOf(draw)]!++
  const expected = draws / cells
  return Math.max(...counts.map((count) => Math.abs(count - expected) / Math.sqrt(expected)))
}

describe('random points', () => {
  // 4.5 standard deviations: one of 1,024 cells goes beyond by chance once in 150 such tests.
  it.each([
    ['follow no neighbour', (u: (index: number) => Float64Array, k: number) => [u(k)[0]!, u(k + 1)[0]!]],
    ['follow no other dimension', (u: (index: number) => Float64Array, k: number) => [u(k)[0]!, u(k)[1]!]],
    ['follow no other scrambling', (u: (index: number) => Float64Array, k: number) => [u(k)[0]!, u(k + BATCH)[0]!]],
  ] as const)('%s', (_, pair) => {
    const points = pointsOf({ sampling: 'random', dimension: 2, seed: 3 })
    const cellOf = (draw: number) => {
      const [a, b] = pair(points, 2 * draw)
      return Math.floor(a! * 32) * 32 + Math.floor(b! * 32)
    }
    expect(worstCell(1024, 60_000, cellOf)).toBeLessThan(4.5)
  })

  it('follow no other seed', () => {
    const first = (seed: number) => pointsOf({ sampling: 'random', dimension: 1, seed })(0)[0]!
    const cellOf = (draw: number) => Math.floor(first(2 * draw) * 16) * 16 + Math.floor(first(2 * draw + 1) * 16)
    expect(worstCell(256, 20_000, cellOf)).toBeLessThan(4.5)
  })
})

describe('scrambled points', () => {
  it('keep the balance of the sequence: one in each box of a net, in every pair of the first dimensions', () => {
    // Dimensions 1 and 2 of the sequence are a (0, 2)-sequence: 2^m points, one in each box of 2^a by 2^(m−a) (Sobol' 1967).
    const m = 6
    for (const seed of range(20)) {
      const [one, other] = [keyOf(seed, 0), keyOf(seed, 1)]
      for (let a = 0; a <= m; a++) {
        const boxes = range(2 ** m).map((k) => {
          const row = Math.floor(owen(sobolWord(k, 0), one) * 2 ** a)
          return row * 2 ** (m - a) + Math.floor(owen(sobolWord(k, 1), other) * 2 ** (m - a))
        })
        expect(new Set(boxes).size).toBe(2 ** m)
      }
    }
  })

  it('are each uniform by itself, and two of them apart', () => {
    const [a, b] = [sobolWord(5, 3), sobolWord(6, 3)]
    const cellOf = (draw: number) => {
      const key = keyOf(11, draw)
      return Math.floor(owen(a, key) * 16) * 16 + Math.floor(owen(b, key) * 16)
    }
    const counts = new Array<number>(256).fill(0)
    for (let draw = 0; draw < 20_000; draw++) counts[cellOf(draw)]!++
    // They differ in the first digit, so never share a half: half the cells stay empty, the others are filled alike.
    const filled = counts.filter((count) => count > 0)
    expect(filled).toHaveLength(128)
    for (const count of filled) expect(Math.abs(count - 20_000 / 128)).toBeLessThan(4.5 * Math.sqrt(20_000 / 128))
  })
})

describe('hypercubes', () => {
  it('have one point in each part: of a slice, and of the slices together', () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: 2, max: 12 }), fc.integer({ min: 1, max: 6 }), (seed, size, slices) => {
        const key = keyOf(seed)
        const block = range(size * slices).map((k) => latin(key, k + 3 * size * slices, size, slices))
        expect(new Set(block.map((u) => Math.floor(u * size * slices))).size).toBe(size * slices)
        for (const slice of range(slices)) {
          const own = block.slice(slice * size, (slice + 1) * size)
          expect(new Set(own.map((u) => Math.floor(u * size))).size).toBe(size)
        }
      }),
    )
  })

  it('put each point anywhere alike', () => {
    expect(worstCell(20, 20_000, (draw) => arranged(keyOf(draw), 0, 5) * 4 + after(draw))).toBeLessThan(4.5)
  })
})

/** Where the second of five goes, counted without the place of the first. */
function after(draw: number): number {
  const [first, second] = [arranged(keyOf(draw), 0, 5), arranged(keyOf(draw), 1, 5)]
  return second - (second > first ? 1 : 0)
}
