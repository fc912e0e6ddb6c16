import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { EndStops } from '../../sim/axis/endstops.ts'
import { endStopsOf } from '../blocks.ts'

const STROKE = 0.03
const stops = endStopsOf(STROKE, 1e6, 0.25)
const speed = fc.double({ min: -2, max: 2, noNaN: true })

describe('EndStops', () => {
  it('leaves the jaw alone within its stroke', () => {
    for (const x of [0, 1e-6, 0.015, STROKE]) for (const v of [-1, 0, 1]) expect(stops.force(x, v)).toBe(0)
  })

  it('is a spring and a damper of half the critical damping beyond it', () => {
    expect(stops.force(-1e-4, 0)).toBeCloseTo(100, 9)
    expect(stops.force(STROKE + 1e-4, 0)).toBeCloseTo(-100, 9)
    expect(stops.force(STROKE + 1e-4, 0.1)).toBeCloseTo(-100 - 0.1 * Math.sqrt(1e6 * 0.25), 9)
  })

  it('pushes back into the stroke and never pulls', () => {
    const over = fc.double({ min: 1e-9, max: 0.01, noNaN: true })
    fc.assert(
      fc.property(over, speed, (x, v) => {
        expect(stops.force(-x, v)).toBeGreaterThanOrEqual(0)
        expect(stops.force(STROKE + x, v)).toBeLessThanOrEqual(0)
        expect(stops.force(STROKE + x, -v) / -stops.force(-x, v) || 1).toBeCloseTo(1, 3)
      }),
    )
  })

  it('is as stiff as the axis, up to 5 N/µm', () => {
    const stiffness = (transmission: number) => {
      const made = new EndStops()
      made.set(transmission, 0.25)
      return made.stiffness
    }
    expect(stiffness(2e5)).toBe(2e5)
    expect(stiffness(1e9)).toBe(5e6)
  })
})
