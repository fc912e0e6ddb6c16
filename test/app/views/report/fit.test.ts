import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Fit, LEAVING, type Leaving, nextFit, START } from '../../../../app/views/report/fit.ts'

const PARTS = Object.keys(LEAVING) as Leaving[]

/** The fit that is found on a sheet whose parts have these heights, in its own type; smaller type has more room. */
function found(heights: Record<Leaving, number>, room: number): { fit: Fit; tries: number } {
  const tooTall = ({ size, left }: Fit) => heightOf(heights, left) > room / size
  let search = START
  for (let tries = 1; tries < 100; tries++) {
    const next = nextFit(search, tooTall(search.fit))
    if (!next) return { fit: search.fit, tries }
    search = next
  }
  throw new Error('no end')
}

const heightOf = (heights: Record<Leaving, number>, left: readonly Leaving[]) =>
  PARTS.reduce((sum, part) => sum + (left.includes(part) ? 0 : heights[part]), 10)

const anyHeights = fc.record(
  Object.fromEntries(PARTS.map((part) => [part, fc.integer({ min: 0, max: 40 })])) as Record<
    Leaving,
    fc.Arbitrary<number>
  >,
)

describe('one page of report', () => {
  it('ends, stands on the page wherever that can be, and leaves no part out that has room', () => {
    fc.assert(
      fc.property(anyHeights, fc.integer({ min: 80, max: 3000 }), (heights, room) => {
        const { fit } = found(heights, room)
        const height = heightOf(heights, fit.left)
        expect(height <= room / fit.size).toBe(true)
        for (const part of fit.left.slice(0, -1)) expect(height + heights[part]).toBeGreaterThan(room / fit.size)
        if (fit.left.length > 0) expect(fit.size).toBe(7)
      }),
    )
  })

  it('takes the largest type with which all has room', () => {
    const heights = Object.fromEntries(PARTS.map((part) => [part, 10])) as Record<Leaving, number>
    const whole = heightOf(heights, [])
    expect(found(heights, 8 * whole).fit).toEqual({ size: 8, left: [] })
    expect(found(heights, 1000 * whole)).toEqual({ fit: { size: 8.5, left: [] }, tries: 1 })
  })

  it('takes the tightest where nothing helps', () => {
    const heights = Object.fromEntries(PARTS.map((part) => [part, 0])) as Record<Leaving, number>
    expect(found(heights, 1).fit).toEqual({ size: 7, left: PARTS })
  })
})
