import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dragScale } from '../../../app/ui/drag-scale.ts'

describe('the scale beneath a field', () => {
  it('is logarithmic over a decade either side of the preset when the range is wide', () => {
    const scale = dragScale(50, 50, 0.01, 20000)
    expect(scale.place(50)).toBeCloseTo(0.5, 9)
    expect(scale.at(0)).toBeCloseTo(5, 9)
    expect(scale.at(1)).toBeCloseTo(500, 9)
  })

  it('keeps a place for zero where zero is allowed', () => {
    const scale = dragScale(8, 8, 0, 1e6)
    expect(scale.place(0)).toBe(0)
    expect(scale.at(0)).toBe(0)
    expect(scale.at(1)).toBeCloseTo(80, 9)
  })

  it('is linear over a narrow range', () => {
    const scale = dragScale(0.9, 0.9, 0.3, 1)
    expect(scale.at(0.5)).toBeCloseTo(0.65, 9)
  })

  it('stays within the allowed range, reaches the value, and gives a place back', () => {
    const amount = fc.double({ min: 1e-3, max: 1e3, noNaN: true })
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.constantFrom(0, 1e-3, -1e3),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (value, base, min, place) => {
          const scale = dragScale(value, base, min, 1e3)
          expect(scale.at(0)).toBeGreaterThanOrEqual(min - 1e-9)
          expect(scale.at(1)).toBeLessThanOrEqual(1e3 + 1e-9)
          expect(scale.at(scale.place(value)) / value).toBeCloseTo(1, 6)
          expect(scale.place(scale.at(place))).toBeCloseTo(place, 6)
        },
      ),
    )
  })
})
