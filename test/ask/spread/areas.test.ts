import { describe, expect, it } from 'vitest'
import { areasOf } from '../../../sim/ask/spread/areas.ts'
import { gridOn, traceBorder } from '../../../sim/ask/spread/border.ts'

type Shape = (x: number, y: number) => string
const X = { from: 2, to: 4 }
const Y = { from: -1000, to: 3000 }
/** A shape of the unit square over ranges of very different size. */
const areas = async (shape: Shape) =>
  areasOf(await traceBorder(X, Y, async (points) => points.map(([x, y]) => shape((x - 2) / 2, (y + 1000) / 4000)))).map(
    ({ class: name, pieces }) => ({
      name,
      pieces: pieces.map((piece) => piece.map(([x, y]) => [(x - 2) / 2, (y + 1000) / 4000] as const)),
    }),
  )

const sizeOf = (piece: (readonly [number, number])[]) =>
  piece.reduce((sum, [x, y], at) => {
    const [a, b] = piece[(at + 1) % piece.length]!
    return sum + (x * b - a * y) / 2
  }, 0)
const whole = (pieces: (readonly [number, number])[][]) => pieces.reduce((sum, piece) => sum + sizeOf(piece), 0)

const hypot = (x: number, y: number) => Math.sqrt(x * x + y * y)

describe('the areas of a map', () => {
  // Closed form: π r².
  it('have the size of a disc, and tile the whole', async () => {
    const found = await areas((x, y) => (hypot(x - 0.48, y - 0.53) < 0.31 ? 'in' : 'out'))
    expect(found.map(({ name }) => name)).toEqual(['in', 'out'])
    expect(whole(found[0]!.pieces) / (Math.PI * 0.31 ** 2)).toBeCloseTo(1, 2)
    expect(whole(found.flatMap(({ pieces }) => pieces))).toBeCloseTo(1, 6)
  })

  it('are of the class that is there, where three of them meet as well', async () => {
    const shape: Shape = (x, y) => {
      const angle = Math.atan2(y - 0.47, x - 0.52)
      return angle < -1.9 || angle > 2.2 ? 'a' : angle < 0.4 ? 'b' : 'c'
    }
    for (const { name, pieces } of await areas(shape)) {
      const wrong = pieces.filter((piece) => {
        const [x, y] = [0, 1].map((k) => piece.reduce((sum, place) => sum + place[k]!, 0) / piece.length)
        return shape(x!, y!) !== name
      })
      expect(whole(wrong)).toBeLessThan(1e-4)
    }
  })

  it('lie on a grid whose lines are the very values that were classified', async () => {
    const asked = new Set<number>()
    const range = { from: 0.1, to: 0.7 }
    await traceBorder(range, range, async (points) => {
      for (const [x] of points) asked.add(x)
      return points.map(() => 'all')
    })
    expect([...asked].sort((a, b) => a - b)).toEqual(gridOn(range))
  })
})
