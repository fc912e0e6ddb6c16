import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Sketch } from '../../../sim/ask/spread/quantiles.ts'

const sketchOf = (values: readonly number[]) => {
  const sketch = new Sketch()
  for (const value of values) sketch.add(value)
  return sketch
}
const figure = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: -10, max: 10, noNaN: true }),
  fc.constantFrom(0, -0, 1, -1, Number.MIN_VALUE, -Number.MIN_VALUE, Number.MAX_VALUE, -Number.MAX_VALUE),
)
const figures = fc.array(figure, { minLength: 1, maxLength: 60 })

describe('a sketch', () => {
  it('has each quantile within a thousandth of the sorted list', () => {
    fc.assert(
      fc.property(figures, fc.double({ min: 0, max: 1, noNaN: true }), (values, share) => {
        const sorted = [...values].sort((a, b) => a - b)
        const found = sketchOf(values).quantile(share)
        const rank = share * values.length
        const near = [Math.ceil(rank) - 1, Math.floor(rank)].map(
          (k) => sorted[Math.min(Math.max(k, 0), sorted.length - 1)]!,
        )
        // 2⁻¹⁰ of the size; numbers below 2⁻¹⁰²² have their bucket's width as an absolute one.
        const reach = (at: number) => Math.abs(at) * 2 ** -10 + 2 ** -1032
        expect(found).toBeGreaterThanOrEqual(near[0]! - reach(near[0]!))
        expect(found).toBeLessThanOrEqual(near[1]! + reach(near[1]!))
      }),
      { numRuns: 1000 },
    )
  })

  it('joins in any order to the same, and passes through JSON unchanged', () => {
    fc.assert(
      fc.property(figures, figures, figures, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, c, share) => {
        const whole = sketchOf([...a, ...b, ...c])
        const parts = [c, a, b].map((part) => Sketch.from(JSON.parse(JSON.stringify(sketchOf(part)))))
        const joined = new Sketch()
        for (const part of parts) joined.join(part)
        expect(JSON.stringify(joined)).toBe(JSON.stringify(whole))
        expect(joined.quantile(share)).toBe(whole.quantile(share))
        expect(joined.size).toBe(whole.size)
      }),
    )
  })

  it('joins with itself, and with nothing', () => {
    const sketch = sketchOf([1, 2])
    sketch.join(sketch)
    sketch.join(new Sketch())
    expect(sketch.size).toBe(4)
    expect(sketch.quantile(1)).toBe(2)
    expect(Sketch.from(JSON.parse(JSON.stringify(new Sketch()))).quantile(0.5)).toBeNaN()
  })

  it('has a histogram of all that lies in its range, each within its own bar', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -4.9, max: 4.9, noNaN: true }), { minLength: 1, maxLength: 50 }),
        (values) => {
          const bars = sketchOf(values).histogram(-6, 6, 12)
          expect(bars.reduce((a, b) => a + b, 0)).toBeCloseTo(values.length, 9)
          expect(bars[0]).toBe(0)
          expect(bars[11]).toBe(0)
        },
      ),
    )
    expect([...sketchOf([0.5, 1.5, 1.6, 2.5, 7]).histogram(0, 3, 3)]).toEqual([1, 2, 1])
    expect([...sketchOf([3, 3]).histogram(0, 3, 3)]).toEqual([0, 0, 2])
  })

  it('counts no other than finite numbers, and takes no counts that are none', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => new Sketch().add(value)).toThrow(RangeError)
    for (const counts of [[5], [5, 0], [5, 1.5], [0.5, 1]]) {
      expect(() => Sketch.from({ least: 0, most: 1, counts })).toThrow(RangeError)
    }
  })
})
