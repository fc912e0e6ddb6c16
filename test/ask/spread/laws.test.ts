import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalQuantile, normalShare } from '../../../sim/ask/spread/distributions.ts'
import { densityOf, type Law, lawOfTolerance, quantileOf } from '../../../sim/ask/spread/laws.ts'

const length = fc.double({ min: 1e-3, max: 10, noNaN: true })
const share = fc.option(fc.boolean(), { nil: undefined })
const law: fc.Arbitrary<Law> = fc.oneof(
  fc.record({ law: fc.constant('normal' as const), sd: length, within: fc.option(length, { nil: undefined }), share }),
  fc.record({ law: fc.constant('uniform' as const), half: length, share }),
  fc.tuple(length, length, length, share).map(([a, b, c, share]) => {
    const [low, mode, high] = [a, b, c].sort((one, other) => one - other) as [number, number, number]
    return { law: 'triangular' as const, low, mode, high, share }
  }),
  fc.record({ law: fc.constant('lognormal' as const), factor: fc.double({ min: 1, max: 3, noNaN: true }) }),
  fc.record({
    law: fc.constant('measured' as const),
    values: fc.array(length, { minLength: 1, maxLength: 20 }),
    share,
  }),
)
const value = fc.double({ min: -5, max: 5, noNaN: true }).filter((each) => Math.abs(each) > 1e-3)
const part = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true })

describe('every law', () => {
  it('never falls as the share below it grows', () => {
    fc.assert(
      fc.property(law, value, part, part, (law, value, one, other) => {
        const [low, high] = [one, other].sort((a, b) => a - b) as [number, number]
        const far = quantileOf(law, value, high)
        // A law that cancels (high − √…) may be off by its round-off.
        expect(quantileOf(law, value, low)).toBeLessThanOrEqual(far + 1e-12 * Math.abs(far))
      }),
      { numRuns: 2000 },
    )
  })

  it('has the density that its quantiles have', () => {
    fc.assert(
      fc.property(law, value, fc.double({ min: 0.01, max: 0.98, noNaN: true }), (law, value, u) => {
        if (law.law === 'measured') return
        const [low, middle, high] = [u - 1e-4, u, u + 1e-4].map((at) => quantileOf(law, value, at)) as [
          number,
          number,
          number,
        ]
        fc.pre(high - low > 1e-9)
        const kink = law.law === 'triangular' && low <= modeOf(law, value) && high >= modeOf(law, value)
        if (!kink) expect(densityOf(law, value, middle) * (high - low)).toBeCloseTo(2e-4, 6)
      }),
      { numRuns: 1000 },
    )
  })

  it('without width is its value', () => {
    for (const law of [
      { law: 'normal', sd: 0, within: 0 },
      { law: 'uniform', half: 0 },
      { law: 'triangular', low: 2, mode: 2, high: 2 },
      { law: 'lognormal', factor: 1 },
      { law: 'measured', values: [2] },
    ] satisfies Law[]) {
      expect([0.001, 0.5, 0.9].map((u) => quantileOf(law, 2, u))).toEqual([2, 2, 2])
      expect([1.9, 2, 2.1].map((x) => densityOf(law, 2, x))).toEqual([0, Number.POSITIVE_INFINITY, 0])
    }
  })
})

const modeOf = (law: Law, value: number) =>
  law.law === 'triangular' ? (law.share ? value * law.mode : law.mode) : Number.NaN

describe('normal', () => {
  it('is cut at ±within, and what is left makes the whole', () => {
    const law: Law = { law: 'normal', sd: 2, within: 3 }
    expect(quantileOf(law, 10, 1e-12)).toBeCloseTo(7, 9)
    expect(quantileOf(law, 10, 1 - 1e-12)).toBeCloseTo(13, 9)
    // A quarter of it below the point with Φ(z) = Φ(−1.5) + ¼·(1 − 2·Φ(−1.5)): closed form.
    const tail = normalShare(-1.5)
    expect(quantileOf(law, 10, 0.25)).toBeCloseTo(10 + 2 * normalQuantile(tail + 0.25 * (1 - 2 * tail)), 12)
    expect(densityOf(law, 10, 13.01)).toBe(0)
  })

  it('counts in shares of a value, whatever its sign', () => {
    expect(quantileOf({ law: 'normal', sd: 0.1, share: true }, -5, 0.9)).toBe(
      quantileOf({ law: 'normal', sd: 0.5 }, -5, 0.9),
    )
    expect(quantileOf({ law: 'normal', sd: 0.1, within: 0.2, share: true }, 5, 1 - 1e-13)).toBeCloseTo(6, 9)
  })

  it('stays in order at the ends of what a sample reaches', () => {
    const ends = [2 ** -33, 2 ** -32, 1 - 2 ** -32, 1 - 2 ** -33].map((u) => quantileOf({ law: 'normal', sd: 1 }, 0, u))
    expect(ends.every(Number.isFinite)).toBe(true)
    expect(ends[0]).toBe(-ends[3]!)
    expect(ends).toEqual([...ends].sort((a, b) => a - b))
  })

  it('of a tolerance ±0.4 at capability 4/3 has its sd four times in it', () => {
    expect(lawOfTolerance(0.4, 4 / 3)).toEqual({ law: 'normal', sd: 0.1 })
  })
})

describe('the others', () => {
  it('triangular: half of a symmetric one below its mode, a fifth below that of low 1, mode 2, high 6', () => {
    expect(quantileOf({ law: 'triangular', low: 1, mode: 3, high: 5 }, 0, 0.5)).toBe(3)
    expect(quantileOf({ law: 'triangular', low: 1, mode: 2, high: 6 }, 0, 0.2)).toBeCloseTo(2, 12)
    expect(quantileOf({ law: 'triangular', low: 0.9, mode: 1, high: 1.2, share: true }, -10, 1e-12)).toBeCloseTo(-12, 4)
  })

  it('lognormal: the value is the median, one deviation above it a factor', () => {
    const law: Law = { law: 'lognormal', factor: 1.5 }
    expect(quantileOf(law, 8, 0.5)).toBe(8)
    expect(quantileOf(law, 8, normalShare(1))).toBeCloseTo(12, 10)
    expect(quantileOf(law, -8, normalShare(1))).toBeCloseTo(-8 / 1.5, 10)
  })

  it('measured: each value with the same weight, in order of size', () => {
    const law: Law = { law: 'measured', values: [3, 1, 2, 2] }
    expect([0.1, 0.3, 0.6, 0.9].map((u) => quantileOf(law, 7, u))).toEqual([1, 2, 2, 3])
    expect(quantileOf({ ...law, share: true }, -2, 0.1)).toBe(-6)
    expect(densityOf(law, 7, 1.5) * 1 + densityOf(law, 7, 2.5) * 1).toBeCloseTo(1, 12)
  })
})
