import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { windingOf } from '../blocks.ts'

/** Current after `time` under a constant voltage, from rest. */
function stepResponse(time: number, step: number, voltage = 24, resistance = 1.2, inductance = 1.2e-3): number {
  const winding = windingOf(inductance, step)
  for (let n = 0; n < Math.round(time / step); n++) winding.step(voltage, winding.keeps(resistance))
  return winding.state.current
}

describe('Winding', () => {
  it('settles at voltage over resistance', () => {
    const winding = windingOf(1e-3, 1e-5)
    for (let n = 0; n < 5000; n++) winding.step(20, winding.keeps(2))
    expect(winding.state.current).toBeCloseTo(10, 12)
  })

  it('rises as V/R·(1 − exp(−tR/L)), with an error that halves with the step', () => {
    const exact = 20 * (1 - Math.exp(-1)) // t = L/R = 1 ms
    const coarse = Math.abs(stepResponse(1e-3, 1e-5) - exact)
    const fine = Math.abs(stepResponse(1e-3, 5e-6) - exact)
    expect(coarse / exact).toBeLessThan(0.004)
    expect(Math.abs(coarse / fine - 2)).toBeLessThan(0.01) // the step over the time constant: the error's next order
  })

  it('keeps to its bounds whatever the step: no overshoot, no ringing', () => {
    const positive = fc.double({ min: 1e-9, max: 1e9, noNaN: true })
    fc.assert(
      fc.property(positive, positive, positive, (step, inductance, resistance) => {
        const winding = windingOf(inductance, step)
        let before = 0
        for (let n = 0; n < 20; n++) {
          winding.step(10, winding.keeps(resistance))
          const now = winding.state.current
          expect(now).toBeGreaterThanOrEqual(before)
          expect(now).toBeLessThanOrEqual((10 / resistance) * (1 + 1e-12))
          before = now
        }
      }),
    )
  })

  it('answers mirrored input with mirrored current, bit for bit', () => {
    const value = fc.double({ min: -100, max: 100, noNaN: true })
    fc.assert(
      fc.property(fc.array(value), (list) => {
        const [one, other] = [windingOf(1e-3, 1e-5), windingOf(1e-3, 1e-5)]
        for (const v of list) {
          one.step(v, one.keeps(1.1))
          other.step(-v, other.keeps(1.1))
          expect(one.state.current + other.state.current).toBe(0)
        }
      }),
    )
  })
})
