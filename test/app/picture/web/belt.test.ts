/** Where a web meets its rolls: tangents in closed form, and a slack that hangs as deep as its length asks. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Disc, pathOf, sagOf, straight } from '../../../../app/picture/web/belt.ts'

const disc = (x: fc.Arbitrary<number>): fc.Arbitrary<Disc> =>
  fc.record({
    x,
    y: fc.double({ min: 0, max: 200, noNaN: true }),
    r: fc.double({ min: 5, max: 40, noNaN: true }),
    side: fc.constantFrom(1 as const, -1 as const),
  })

it('a straight touches both discs on the side on which the web runs, and cuts neither', () => {
  fc.assert(
    fc.property(
      disc(fc.double({ min: 0, max: 50, noNaN: true })),
      disc(fc.double({ min: 200, max: 400, noNaN: true })),
      (a, b) => {
        const [from, to] = straight(a, b)
        const length = Math.hypot(to.x - from.x, to.y - from.y)
        for (const [each, point] of [
          [a, from],
          [b, to],
        ] as const) {
          expect(Math.hypot(point.x - each.x, point.y - each.y)).toBeCloseTo(each.r, 6)
          const along = ((point.x - each.x) * (to.x - from.x) + (point.y - each.y) * (to.y - from.y)) / length
          expect(along).toBeCloseTo(0, 6)
          expect(Math.sign(each.y - point.y)).toBe(each.side) // y grows downwards
        }
      },
    ),
    { numRuns: 200 },
  )
})

it('over discs of one size and height is level', () => {
  const [from, to] = straight({ x: 0, y: 50, r: 10, side: 1 }, { x: 100, y: 50, r: 10, side: 1 })
  expect([from, to]).toEqual([
    { x: 0, y: 40 },
    { x: 100, y: 40 },
  ])
})

it('hangs so deep that its arc is longer by the slack (numerically)', () => {
  const [length, slack] = [2, 0.01]
  const depth = sagOf(slack, length)
  const steps = 10_000
  let arc = 0
  for (let n = 0; n < steps; n++) {
    const x = (n + 0.5) / steps - 0.5 // of the span
    arc += Math.hypot(1, (8 * depth * x) / length) * (length / steps)
  }
  expect(Math.abs((arc - length) / slack - 1)).toBeLessThan(0.02) // a shallow parabola
  expect(sagOf(0, 2)).toBe(0)
})

it('hangs in one straight only, and not where it is taut', () => {
  const discs: Disc[] = [0, 100, 200].map((x) => ({ x, y: 50, r: 10, side: 1 }))
  expect(pathOf(discs, 1, 20).match(/Q/g)).toHaveLength(1)
  expect(pathOf(discs, 1, 0)).not.toContain('Q')
})
