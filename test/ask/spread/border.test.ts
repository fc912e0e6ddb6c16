/** Traced borders against bisection along 200 random lines across shapes whose class is a formula. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BorderMap, traceBorder } from '../../../sim/ask/spread/border.ts'
import { seeded } from '../../../sim/core/noise.ts'

type Shape = (x: number, y: number) => string
const UNIT = { from: 0, to: 1 }
const hypot = (x: number, y: number) => Math.sqrt(x * x + y * y)

const SHAPES: Record<string, { at: Shape; lines: number; length: number }> = {
  circle: { at: (x, y) => (hypot(x - 0.48, y - 0.53) < 0.31 ? 'in' : 'out'), lines: 1, length: 2 * Math.PI * 0.31 },
  'two islands': {
    at: (x, y) => (hypot(x - 0.3, y - 0.3) < 0.1 ? 'a' : hypot(x - 0.72, y - 0.6) < 0.21 ? 'b' : 'sea'),
    lines: 2,
    length: 2 * Math.PI * 0.31,
  },
  'three sectors that meet': {
    at: (x, y) => {
      const angle = Math.atan2(y - 0.47, x - 0.52)
      return angle < -1.9 || angle > 2.2 ? 'a' : angle < 0.4 ? 'b' : 'c'
    },
    lines: 3,
    length: 1.674,
  },
  'a strip narrower than a cell of the grid': {
    at: (x, y) => (Math.abs(y - 0.3 - 0.4 * x) < 0.004 ? 'strip' : 'rest'),
    lines: 2,
    length: 2 * hypot(1, 0.4),
  },
  'a wave': { at: (x, y) => (y < 0.5 + 0.3 * Math.sin(9 * x) ? 'below' : 'above'), lines: 1, length: 2.02 },
}

const trace = (shape: Shape, asked: (count: number) => void = () => {}) =>
  traceBorder(UNIT, UNIT, async (points) => {
    asked(points.length)
    return points.map(([x, y]) => shape(x, y))
  })

/** Each shape is traced once, with the number of points asked for. */
const traced = new Map<Shape, Promise<{ map: BorderMap; asked: number }>>()
function tracedOnce(shape: Shape) {
  const known = traced.get(shape)
  if (known) return known
  let asked = 0
  const found = trace(shape, (count) => {
    asked += count
  }).then((map) => ({ map, asked }))
  traced.set(shape, found)
  return found
}

const piecesOf = ({ borders }: BorderMap) =>
  borders.flatMap(({ classes, points }) => points.slice(1).map((to, k) => ({ classes, from: points[k]!, to })))

function distance(map: BorderMap, classes: string[], x: number, y: number): number {
  return Math.min(
    ...piecesOf(map)
      .filter((piece) => classes.every((each) => piece.classes.includes(each)))
      .map(({ from, to }) => {
        const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
        const share = ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)
        const t = Math.min(Math.max(share, 0), 1)
        return hypot(x - from[0] - t * dx, y - from[1] - t * dy)
      }),
  )
}

/** Every place on the line where the class changes, by bisection of 2,000 steps, with the classes on both sides. */
function crossings(shape: Shape, from: readonly number[], to: readonly number[]) {
  const at = (t: number) => [from[0]! + (to[0]! - from[0]!) * t, from[1]! + (to[1]! - from[1]!) * t] as const
  const steps = 2000
  return Array.from({ length: steps }, (_, k) => [k / steps, (k + 1) / steps] as [number, number])
    .map(([low, high]) => ({ low, high, before: shape(...at(low)), after: shape(...at(high)) }))
    .filter(({ before, after }) => before !== after)
    .map(({ low, high, before, after }) => {
      let [a, b] = [low, high]
      for (let k = 0; k < 30; k++) {
        const middle = (a + b) / 2
        if (shape(...at(middle)) === before) a = middle
        else b = middle
      }
      return { place: at(a), classes: [before, after] }
    })
}

describe.each(Object.entries(SHAPES))('%s', (_, { at, lines, length }) => {
  it('has its border within 1/500 of where bisection finds it on 200 random lines', async () => {
    const { map } = await tracedOnce(at)
    const noise = seeded(11)
    let met = 0
    for (let line = 0; line < 200; line++) {
      const [a, b, c, d] = [noise.uniform(), noise.uniform(), noise.uniform(), noise.uniform()]
      for (const { place, classes } of crossings(at, [a, b], [c, d])) {
        met++
        expect(distance(map, classes, ...place)).toBeLessThan(1 / 500)
      }
    }
    expect(met).toBeGreaterThan(100)
  })

  it('is traced in as many lines as it has, as long as it is, of true border only', async () => {
    const { map } = await tracedOnce(at)
    expect(map.borders).toHaveLength(lines)
    const total = piecesOf(map).reduce((sum, { from, to }) => sum + hypot(to[0] - from[0], to[1] - from[1]), 0)
    expect(Math.abs(total / length - 1)).toBeLessThan(0.01)
    for (const { classes, from, to } of piecesOf(map)) {
      const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
      const about = Array.from({ length: 16 }, (_, k) => (k * Math.PI) / 8).map((angle) =>
        at(x + Math.cos(angle) / 500, y + Math.sin(angle) / 500),
      )
      expect(classes.every((each) => about.includes(each))).toBe(true)
    }
  })

  it('costs points by its length, none of them twice', async () => {
    const { map, asked } = await tracedOnce(at)
    expect(map.evaluations).toBe(asked)
    // The grid takes 33²; a uniform map of 1/500 would take 251,001.
    expect(asked - 33 ** 2).toBeLessThan(1300 * length)
  })

  it('tiles the ranges with cells', async () => {
    const { cells } = (await tracedOnce(at)).map
    expect(cells.reduce((sum, { width, height }) => sum + width * height, 0)).toBeCloseTo(1, 12)
    for (const { x, y, width, height, corners } of cells) {
      expect(corners).toEqual([at(x, y), at(x + width, y), at(x, y + height), at(x + width, y + height)])
    }
  })
})

describe('a map', () => {
  it('of one class has no border, and takes the grid alone', async () => {
    const map = await trace(() => 'all')
    expect(map.borders).toEqual([])
    expect(map.evaluations).toBe(33 ** 2)
  })

  it('is in the units of its parameters', async () => {
    const map = await traceBorder({ from: 10, to: 30 }, { from: -2, to: -1 }, async (points) =>
      points.map(([x]) => (x < 17.77 ? 'left' : 'right')),
    )
    expect(map.borders).toHaveLength(1)
    for (const [x, y] of map.borders[0]!.points) {
      expect(Math.abs(x - 17.77)).toBeLessThan(20 / 500)
      expect(y >= -2 && y <= -1).toBe(true)
    }
    expect(map.borders[0]!.classes).toEqual(['left', 'right'])
  })

  it('finds every island wider than it says one may hide', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        async (x, y) => {
          // A square that wide holds a point of the grid wherever it lies.
          const half = (1 / 32 / 2) * 1.001
          const map = await trace((a, b) => (Math.max(Math.abs(a - x), Math.abs(b - y)) < half ? 'island' : 'sea'))
          expect(map.hidden).toBe(1 / 32)
          expect(map.borders).toHaveLength(1)
          const [first, last] = [map.borders[0]!.points[0], map.borders[0]!.points.at(-1)]
          expect(last).toEqual(first)
        },
      ),
      { numRuns: 20 },
    )
  })
})
