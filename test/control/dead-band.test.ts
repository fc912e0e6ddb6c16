import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deadBand } from '../../sim/control/dead-band.ts'

/** Describing function of an odd function: its first harmonic over the amplitude, by the midpoint rule on a quarter period. */
function describingFunction(output: (value: number) => number, amplitude: number): number {
  const count = 2_000_000
  let sum = 0
  for (let n = 0; n < count; n++) {
    const sine = Math.sin(((n + 0.5) / count) * (Math.PI / 2))
    sum += output(amplitude * sine) * sine
  }
  return (2 * sum) / count / amplitude
}

describe('deadBand', () => {
  it('is zero inside, edges included, and unchanged outside', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), fc.double({ min: 0, noNaN: true }), (value, halfWidth) => {
        expect(deadBand(value, halfWidth)).toBe(Math.abs(value) <= halfWidth ? 0 : value)
      }),
    )
    expect([0.5, -0.5, 0.5000001, -2].map((value) => deadBand(value, 0.5))).toEqual([0, 0, 0.5000001, -2])
    expect(deadBand(Number.NaN, 1)).toBeNaN()
  })

  /*
   * First harmonic of the dead band with jump, r = half-width/amplitude: 1 − (2/π)(asin r − r √(1 − r²)), derived from
   * the definition in Slotine and Li, Applied Nonlinear Control, chapter on describing functions. The dead zone without jump
   * would give 0.391002 at r = 0.5 instead of 0.942331.
   */
  it.each([
    [0.9, 0.536879],
    [0.75, 0.77592],
    [0.5, 0.942331],
    [0.25, 0.99324],
  ])('has the describing function of the form with jump: r = %f gives %f', (r, gain) => {
    expect(describingFunction((value) => deadBand(value, r * 3), 3)).toBeCloseTo(gain, 5)
  })
})
