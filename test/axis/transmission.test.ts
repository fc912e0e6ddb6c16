import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { transmissionOf } from '../blocks.ts'

const lead = fc.double({ min: -1e-3, max: 1e-3, noNaN: true })
const rate = fc.double({ min: -1, max: 1, noNaN: true })
const tight = transmissionOf(8e6, 300, 0)
const loose = transmissionOf(8e6, 300, 2e-4)

describe('Transmission', () => {
  it('without backlash is a spring and a damper', () => {
    fc.assert(
      fc.property(lead, rate, (x, v) => {
        expect(tight.force(x, v)).toBeCloseTo(8e6 * x + 300 * v, 6)
      }),
    )
  })

  it('has no spring force inside the play and starts from zero at either flank', () => {
    for (const x of [-1e-4, -5e-5, 0, 5e-5, 1e-4]) expect(loose.force(x, 0)).toBeCloseTo(0, 9)
    expect(loose.force(1e-4 + 1e-6, 0)).toBeCloseTo(8, 6)
    expect(loose.force(-1e-4 - 1e-6, 0)).toBeCloseTo(-8, 6)
    for (const flank of [1e-4, -1e-4])
      for (const v of [-0.1, 0.1])
        expect(Math.abs(loose.force(flank + 1e-12, v) - loose.force(flank - 1e-12, v))).toBeLessThan(1e-4)
  })

  it('beyond the play is the spring without play, half the play later', () => {
    fc.assert(
      fc.property(lead, rate, (x, v) => {
        fc.pre(x > 0)
        expect(loose.force(x + 1e-4, v)).toBeCloseTo(tight.force(x, v), 6)
      }),
    )
  })

  it('grows with lead and with rate', () => {
    fc.assert(
      fc.property(lead, lead, rate, rate, (x, y, v, w) => {
        for (const transmission of [tight, loose]) {
          expect(transmission.force(Math.max(x, y), v)).toBeGreaterThanOrEqual(transmission.force(Math.min(x, y), v))
          expect(transmission.force(x, Math.max(v, w))).toBeGreaterThanOrEqual(transmission.force(x, Math.min(v, w)))
        }
      }),
    )
  })

  it('answers mirrored motion with mirrored force, bit for bit', () => {
    fc.assert(
      fc.property(lead, rate, (x, v) => {
        for (const transmission of [tight, loose]) expect(transmission.force(x, v) + transmission.force(-x, -v)).toBe(0)
      }),
    )
  })
})
