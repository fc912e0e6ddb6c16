import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { correlator, type Pair } from '../../../sim/ask/spread/correlate.ts'
import { normalQuantile } from '../../../sim/ask/spread/distributions.ts'
import { pointsOf } from '../../../sim/ask/spread/points.ts'

const applied = (dimension: number, pairs: Pair[]) => {
  const found = correlator(dimension, pairs)
  if (found.kind !== 'correlates') throw new Error('contradiction')
  return found.apply
}
const points = pointsOf({ sampling: 'random', dimension: 4, seed: 8 })

function correlationOf(apply: (u: Float64Array) => Float64Array, a: number, b: number, count = 20_000): number {
  const z = Array.from({ length: count }, (_, k) => Array.from(apply(points(k)), normalQuantile))
  const sum = (of: (score: number[]) => number) => z.reduce((total, score) => total + of(score), 0)
  return sum((s) => s[a]! * s[b]!) / Math.sqrt(sum((s) => s[a]! ** 2) * sum((s) => s[b]! ** 2))
}

describe('quantities that go together', () => {
  it('have the correlations asked, and none that were not', () => {
    const apply = applied(4, [
      { a: 3, b: 0, correlation: 0.8 },
      { a: 2, b: 3, correlation: -0.5 },
    ])
    // Standard error (1 − ρ²)/√n, so 0.007 at most; four of them.
    expect(Math.abs(correlationOf(apply, 0, 3) - 0.8)).toBeLessThan(0.02)
    expect(Math.abs(correlationOf(apply, 2, 3) + 0.5)).toBeLessThan(0.028)
    expect(Math.abs(correlationOf(apply, 0, 2))).toBeLessThan(0.028)
    expect(Math.abs(correlationOf(apply, 0, 1))).toBeLessThan(0.028)
  })

  it('keep their own law', () => {
    const apply = applied(4, [{ a: 0, b: 1, correlation: 0.9 }])
    const counts = new Array<number>(20).fill(0)
    for (let k = 0; k < 20_000; k++) counts[Math.floor(apply(points(k))[1]! * 20)]!++
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(4.5 * Math.sqrt(1000))
  })

  it('may be one and the same, or opposite', () => {
    const apply = applied(3, [
      { a: 0, b: 1, correlation: 1 },
      { a: 0, b: 2, correlation: -1 },
      { a: 1, b: 2, correlation: -1 },
    ])
    for (let k = 0; k < 50; k++) {
      const u = apply(points(k))
      expect(u[1]).toBeCloseTo(u[0]!, 12)
      expect(u[2]).toBeCloseTo(1 - u[0]!, 12)
    }
  })

  it('leave all others as they are', () => {
    const apply = applied(4, [{ a: 1, b: 3, correlation: 0.4 }])
    for (let k = 0; k < 50; k++) {
      expect(apply(points(k))[0]).toBe(points(k)[0])
      expect(apply(points(k))[1]).toBe(points(k)[1])
      expect(apply(points(k))[2]).toBe(points(k)[2])
    }
    expect(applied(4, [])(points(1))).toEqual(points(1))
  })
})

describe('correlations that contradict each other', () => {
  const chain: Pair[] = [
    { a: 0, b: 1, correlation: 0.7 },
    { a: 1, b: 2, correlation: 0.7 },
    { a: 0, b: 2, correlation: -0.7 },
  ]

  it('are named, without those that have no part in it', () => {
    const other: Pair = { a: 3, b: 4, correlation: 0.5 }
    expect(correlator(5, [other, ...chain])).toEqual({ kind: 'contradiction', pairs: chain })
  })

  it('are those of one that goes with two which are the same, but not alike', () => {
    const same: Pair[] = [
      { a: 0, b: 1, correlation: 1 },
      { a: 0, b: 2, correlation: 0.5 },
      { a: 1, b: 2, correlation: 0.4 },
    ]
    expect(correlator(3, same).kind).toBe('contradiction')
    expect(
      correlator(
        3,
        same.map((pair) => ({ ...pair, correlation: pair.correlation === 1 ? 1 : 0.5 })),
      ).kind,
    ).toBe('correlates')
  })

  it('count one asked twice', () => {
    const twice: Pair[] = [
      { a: 0, b: 1, correlation: 0.5 },
      { a: 1, b: 0, correlation: 0.4 },
    ]
    expect(correlator(2, twice)).toEqual({ kind: 'contradiction', pairs: twice })
    expect(correlator(2, [twice[0]!, { a: 1, b: 0, correlation: 0.5 }]).kind).toBe('correlates')
  })

  it('are those without a law: the determinant of three says so (closed form)', () => {
    const correlation = fc.double({ min: -0.99, max: 0.99, noNaN: true })
    fc.assert(
      fc.property(correlation, correlation, correlation, (p, q, r) => {
        const determinant = 1 + 2 * p * q * r - p * p - q * q - r * r
        fc.pre(Math.abs(determinant) > 1e-9)
        const found = correlator(3, [
          { a: 0, b: 1, correlation: p },
          { a: 0, b: 2, correlation: q },
          { a: 1, b: 2, correlation: r },
        ])
        expect(found.kind).toBe(determinant > 0 ? 'correlates' : 'contradiction')
      }),
    )
  })

  it('are not taken for pairs that make no sense', () => {
    for (const pair of [
      { a: 0, b: 0, correlation: 0.5 },
      { a: 0, b: 2, correlation: 0.5 },
      { a: 0, b: 1, correlation: 1.01 },
      { a: 0, b: 1, correlation: Number.NaN },
    ]) {
      expect(() => correlator(2, [pair])).toThrow(RangeError)
    }
  })
})
