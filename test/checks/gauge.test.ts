import { describe, expect, it } from 'vitest'
import { gaugeOf } from '../blocks.ts'

/**
 * Wheatstone bridge (closed forms of its two dividers): a quarter bridge gives V/Vex = x/(4 + 2x) with x = GF·ε, at GF 2 and
 * 1000 µε 0.4995005 mV/V where the straight line says 0.5, so it reads 0.0999 % low; a bending half bridge gives x/2 without that
 * error.
 */
const ideal = { bandwidth: 1e6, gainError: 0, offset: 0, drift: 0, noise: 0, resolution: 0, fingerMass: 0 }
const read = (options: Partial<typeof ideal>, force: number, time = 1) => {
  const gauge = gaugeOf({ ...ideal, ...options }, 5e-5, 1)
  for (let n = 0; n < 2000; n++) gauge.feel(force, 0)
  return gauge.read(time)
}
const quarter = (x: number) => x / (4 + 2 * x)

describe('gauge', () => {
  it('reads a full-scale quarter bridge 0.0999 % low, as its gain error', () => {
    const x = 2 * 1000e-6
    expect(1000 * quarter(x)).toBeCloseTo(0.4995005, 7)
    const error = quarter(x) / (x / 4) - 1
    expect(100 * error).toBeCloseTo(-0.0999, 4)
    expect(read({ gainError: error }, 40)).toBeCloseTo(40 * (0.4995005 / 0.5), 5)
  })

  it('settles as a first order of its bandwidth (closed form)', () => {
    const gauge = gaugeOf({ ...ideal, bandwidth: 100 }, 1e-5, 1)
    for (let n = 0; n < 1000; n++) gauge.feel(10, 0) // one time constant
    expect(gauge.read(0)).toBeCloseTo(10 * (1 - Math.exp(-1)), 2)
  })

  it('drifts, steps and feels the finger in front of it', () => {
    expect(read({ offset: 0.2, drift: 0.1 }, 5, 3)).toBeCloseTo(5.5, 9)
    expect(read({ resolution: 0.25 }, 5.1)).toBeCloseTo(5, 9)
    const gauge = gaugeOf({ ...ideal, fingerMass: 0.03 }, 5e-5, 1)
    for (let n = 0; n < 2000; n++) gauge.feel(0, 10)
    expect(gauge.read(0)).toBeCloseTo(0.3, 9) // m·a
  })
})
