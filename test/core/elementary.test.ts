import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cosine, exponential, power, sine, sineOfTurns } from '../../sim/core/elementary.ts'

describe('sineOfTurns', () => {
  it('agrees with Math.sin to 1e-12 over several turns', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (turns) => {
        expect(Math.abs(sineOfTurns(turns) - Math.sin(2 * Math.PI * turns))).toBeLessThan(1e-12)
      }),
      { numRuns: 2000 },
    )
    for (let n = -4096; n <= 4096; n++)
      expect(Math.abs(sineOfTurns(n / 4096) - Math.sin((2 * Math.PI * n) / 4096))).toBeLessThan(1e-13)
  })

  it('is exact at the quarters', () => {
    expect([0, 0.25, 0.5, 0.75, 1].map((turns) => sineOfTurns(turns) + 0)).toEqual(
      [0, 1, 0, -1, 0].map((y) => expect.closeTo(y, 15)),
    )
  })

  it('repeats after any whole number of turns, to the last bit', () => {
    for (let n = 0; n < 1024; n++)
      for (const turn of [1, 7, 1000, -3]) expect(sineOfTurns(turn + n / 1024)).toBe(sineOfTurns(n / 1024))
  })

  it('is odd, to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.4999, noNaN: true }), (turns) => {
        expect(sineOfTurns(-turns) + sineOfTurns(turns)).toBe(0)
      }),
    )
  })
})

describe('cosine', () => {
  it('agrees with Math.cos to 1e-12', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (angle) => {
        expect(Math.abs(cosine(angle) - Math.cos(angle))).toBeLessThan(1e-12)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('sine', () => {
  it('agrees with Math.sin to 1e-12', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (angle) => {
        expect(Math.abs(sine(angle) - Math.sin(angle))).toBeLessThan(1e-12)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('exponential', () => {
  it.each([
    ['where its series is longest', 0.35, 1e-15],
    ['over all sizes', 690, 1e-13],
  ])('agrees with Math.exp %s', (_, most, error) => {
    fc.assert(
      fc.property(fc.double({ min: -most, max: most, noNaN: true }), (x) => {
        expect(Math.abs(exponential(x) / Math.exp(x) - 1)).toBeLessThan(error)
      }),
      { numRuns: 5000 },
    )
  })
})

describe('power', () => {
  it('agrees with the engine over all sizes that contacts have', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: -1, max: 2, noNaN: true }),
        (size, exponent) => {
          const base = 10 ** size
          expect(Math.abs(power(base, exponent) / base ** exponent - 1)).toBeLessThan(1e-11)
        },
      ),
    )
  })

  // A run that leaves the range of finite numbers must end there, not in a search for the size of infinity.
  it.each([
    [Number.POSITIVE_INFINITY, 1.3, Number.POSITIVE_INFINITY],
    [Number.POSITIVE_INFINITY, -0.2, 0],
    [0, 1.3, 0],
    [Number.NaN, 1.3, Number.NaN],
  ])('ends at %d to the %d', (base, exponent, expected) => {
    expect(power(base, exponent)).toBe(expected)
  })
})
