import fc from 'fast-check'
import { expect, it } from 'vitest'
import { leastOf, leastRoot } from '../../sim/core/least.ts'

const size = fc.oneof(fc.constantFrom(0, Infinity), fc.double({ min: 1e-150, max: 1e150, noNaN: true }))
/** Factors about 1, where a quotient is about the least so far. */
const about = fc.integer({ min: -8, max: 8 }).map((ulps) => 1 + ulps * Number.EPSILON)

it('is the smaller of what was and a quotient, to the last bit, though it seldom divides', () => {
  fc.assert(
    fc.property(size, size, size, (least, value, over) => {
      fc.pre(over > 0 && over < Infinity)
      expect(leastOf(least, value, over)).toBe(Math.min(least, value / over))
      expect(leastRoot(least, value, over)).toBe(Math.min(least, Math.sqrt(value / over)))
    }),
  )
})

it('divides where rounding decides', () => {
  const ordinary = fc.double({ min: 1e-6, max: 1e6, noNaN: true })
  fc.assert(
    fc.property(ordinary, ordinary, about, (least, over, factor) => {
      expect(leastOf(least, least * over * factor, over)).toBe(Math.min(least, (least * over * factor) / over))
      const value = least * least * over * factor
      expect(leastRoot(least, value, over)).toBe(Math.min(least, Math.sqrt(value / over)))
    }),
  )
})
