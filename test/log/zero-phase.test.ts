import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { zeroPhase } from '../../sim/log/zero-phase.ts'

const wave = (length: number, frequency: number, phase = 0) =>
  Float64Array.from({ length }, (_, k) => Math.sin(2 * Math.PI * frequency * k + phase))

/** Amplitude and phase of a frequency over the middle of a signal, whole periods. */
function lineOf(values: Float64Array, frequency: number) {
  let [s, c] = [0, 0]
  const from = values.length / 4
  const to = values.length - from
  for (let k = from; k < to; k++) {
    s += values[k]! * Math.sin(2 * Math.PI * frequency * k)
    c += values[k]! * Math.cos(2 * Math.PI * frequency * k)
  }
  const n = (to - from) / 2
  return { gain: Math.hypot(s, c) / n, phase: Math.atan2(c, s) }
}

describe('low pass without phase', () => {
  // Closed form: |H|² of a Butterworth low pass of fourth order under the bilinear transformation.
  it.each([
    [0.05, 0.01],
    [0.05, 0.05],
    [0.05, 0.08],
    [0.2, 0.1],
    [0.2, 0.25],
  ])('corner %d, frequency %d: gain 1/(1 + (tan/tan)⁸), no phase', (corner, frequency) => {
    const expected = 1 / (1 + (Math.tan(Math.PI * frequency) / Math.tan(Math.PI * corner)) ** 8)
    const { gain, phase } = lineOf(zeroPhase(wave(4000, frequency), corner), frequency)
    expect(gain).toBeCloseTo(expected, 6)
    expect(Math.abs(phase)).toBeLessThan(1e-6)
  })

  it('leaves a straight line as it is', () => {
    const line = Float64Array.from({ length: 500 }, (_, k) => 3 - 0.02 * k)
    zeroPhase(line, 0.05).forEach((value, k) => {
      expect(value).toBeCloseTo(line[k]!, 7)
    })
  })

  it('is the same backwards in time', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 200, maxLength: 300 }), (list) => {
        const values = Float64Array.from(list)
        const there = zeroPhase(values, 0.1)
        const back = zeroPhase(values.slice().reverse(), 0.1).reverse()
        // The two passes differ in order, which shows only where the ends were carried on.
        for (let k = 80; k < values.length - 80; k++) expect(Math.abs(there[k]! - back[k]!)).toBeLessThan(1e-6)
      }),
      { numRuns: 50 },
    )
  })

  it('refuses a corner at or beyond half the sample rate', () => {
    expect(() => zeroPhase(wave(10, 0.1), 0.5)).toThrow(RangeError)
    expect(() => zeroPhase(wave(10, 0.1), 0)).toThrow(RangeError)
  })
})
