import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { limits, valueAt } from '../../../app/ui/chart/data.ts'
import { apart, valueText } from '../../../app/ui/chart/labels.ts'
import { roundTimes } from '../../../app/ui/chart/ticks.ts'
import { PLAIN_TIME, type TimeMap } from '../../../app/ui/chart/types.ts'

describe('the value at an instant', () => {
  const time = new Float64Array([0, 1, 1, 2])
  const values = new Float64Array([0, 10, 20, 40])

  it('lies on the straight line between two rows', () => {
    expect(valueAt(time, values, 0.25)).toBe(2.5)
    expect(valueAt(time, values, 1.5)).toBe(30)
    expect(valueAt(time, values, 2)).toBe(40)
  })

  it('takes the later of two rows of the same time', () => {
    expect(valueAt(time, values, 1)).toBe(20)
  })

  it('does not exist outside the rows', () => {
    for (const at of [-0.1, 2.1]) expect(valueAt(time, values, at)).toBeNull()
    expect(valueAt(time, null, 1)).toBeNull()
    expect(valueAt(new Float64Array(0), new Float64Array(0), 0)).toBeNull()
  })
})

describe('a value that is read', () => {
  const series = (...list: number[]) => ({ label: 'a', color: 'red', values: new Float64Array(list) })
  const content = (...all: ReturnType<typeof series>[]) => ({
    series: all,
    time: new Float64Array([0, 1]),
    xRange: [0, 1] as [number, number],
    yRange: null,
    calm: 0,
    bands: [],
    ranges: [],
    marks: [],
    lens: PLAIN_TIME,
    timeAxis: true,
    unit: { symbol: 'N', toShown: (si: number) => si, toSi: (shown: number) => shown },
  })

  it('is 0 where it is nothing against all that is drawn, and what it is otherwise', () => {
    const [small, large] = [series(-2e-7, 3e-7), series(0, 60)]
    expect(valueText(content(small, large), small, 0)).toBe('0\u00a0N')
    expect(valueText(content(small), small, 0)).toContain('10⁻⁷')
  })
})

describe('the vertical axis', () => {
  it('shows zero, the data and the edges of the window', () => {
    const [low, high] = limits(5, 30, [12, 40])
    expect(low).toBe(0)
    expect(high).toBeGreaterThan(40)
  })

  it('does not let a far edge dwarf the data', () => {
    expect(limits(0, 30, [12, 4000])[1]).toBeLessThan(40)
  })

  it('is at least as wide as what is calm, on the side of the data', () => {
    expect(limits(0, 0.001, [], 40)[1]).toBeGreaterThanOrEqual(40)
    expect(limits(-0.002, 0.001, [], 40)).toEqual(limits(-0.001, 0.002, [], 40))
    expect(limits(-0.002, 0.001, [], 40)[0]).toBeLessThanOrEqual(-10)
    expect(limits(0, 50, [], 40)).toEqual(limits(0, 50, []))
  })

  it('has a span even without data', () => {
    const [low, high] = limits(null, null, [])
    expect(high).toBeGreaterThan(low)
  })
})

describe('names at the ends of lines', () => {
  it('keep their order, do not overlap, and stay inside where there is room', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 250, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (places) => {
          const moved = apart(places, 30, 0, 200)
          const order = places.map((_, index) => index).sort((a, b) => places[a]! - places[b]!)
          for (let n = 1; n < order.length; n++) {
            expect(moved[order[n]!]! - moved[order[n - 1]!]!).toBeGreaterThanOrEqual(30 - 1e-9)
          }
          expect(Math.min(...moved)).toBeGreaterThanOrEqual(0)
          expect(Math.max(...moved)).toBeLessThanOrEqual(170)
        },
      ),
    )
  })
})

describe('times on the axis', () => {
  it('are round', () => {
    expect(roundTimes(0, 1.5, PLAIN_TIME, 800, 48)).toEqual(
      [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15].map((n) => n / 10),
    )
  })

  const stretched = (from: number, to: number, gain: number): TimeMap => ({
    toDisplay: (t) => t + (gain - 1) * Math.min(Math.max(t - from, 0), to - from),
    toTime: () => Number.NaN,
  })

  it('are denser where the lens stretches', () => {
    const times = roundTimes(0, 1, stretched(0.4, 0.5, 10), 600, 30)
    expect(times.filter((t) => t > 0.4 && t < 0.5)).toEqual([0.41, 0.42, 0.43, 0.44, 0.45, 0.46, 0.47, 0.48, 0.49])
  })

  it('are never closer than the space asked for, wherever the lens lies', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        share,
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        (from, width, gain) => {
          const lens = stretched(from, from + width, gain)
          const times = roundTimes(0, 1.5, lens, 800, 48)
          const places = times.map((t) => (lens.toDisplay(t) * 800) / lens.toDisplay(1.5))
          for (let n = 1; n < places.length; n++) expect(places[n]! - places[n - 1]!).toBeGreaterThanOrEqual(48 - 1e-6)
        },
      ),
      { numRuns: 500 },
    )
  })
})
