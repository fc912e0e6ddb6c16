import { describe, expect, it } from 'vitest'
import {
  AT_FIRST,
  nearestFrequency,
  planeOf,
  pointAt,
  SIZE,
  squareOf,
  WIDEST,
} from '../../../../app/views/loops/plane.ts'

/** L = 1/(jω) by its closed form: a straight line down the imaginary axis. */
const frequency = Float64Array.of(0.5, 1, 2, 4)
const curve = {
  frequency,
  re: new Float64Array(4),
  im: frequency.map((omega) => -1 / omega),
} as never

describe('the Nyquist plane', () => {
  it('has −1 and the unit circle where they belong, and the same scale both ways', () => {
    const { x, y, one } = planeOf(AT_FIRST)
    expect(x(0) - x(-1)).toBeCloseTo(one, 9)
    expect(y(-1) - y(0)).toBeCloseTo(one, 9)
    expect(y(0)).toBeCloseTo(SIZE / 2, 9)
  })

  it('stays a square whatever part is asked for, with the same middle, inside what can be looked at', () => {
    const { x, y } = squareOf({ x: [-1.2, -0.8], y: [-0.1, 0.1] })
    expect(x[1] - x[0]).toBeCloseTo(y[1] - y[0], 12)
    expect(x[1] - x[0]).toBeCloseTo(0.4, 12)
    expect((x[0] + x[1]) / 2).toBeCloseTo(-1, 12)
    expect((y[0] + y[1]) / 2).toBeCloseTo(0, 12)
    expect(squareOf({ x: [-900, 900], y: [0, 1] })).toEqual(WIDEST)
    expect(squareOf({ x: [15, 25], y: [0, 10] }).x[1]).toBe(WIDEST.x[1])
  })

  it('reads a curve between its points and finds the frequency that lies nearest to a place', () => {
    expect(pointAt(curve, 1)).toEqual({ re: 0, im: -1 })
    expect(pointAt(curve, 1.5)!.im).toBeCloseTo(-0.75, 12)
    expect(pointAt(curve, 0.1)).toBeNull()
    expect(pointAt(curve, 9)).toBeNull()
    const plane = planeOf(AT_FIRST)
    expect(nearestFrequency([curve], plane, { x: plane.x(0.1), y: plane.y(-0.9) })).toBe(1)
    expect(nearestFrequency([], plane, { x: 0, y: 0 })).toBeNull()
  })
})
