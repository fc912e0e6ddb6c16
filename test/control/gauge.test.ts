import { describe, expect, it } from 'vitest'
import type { Gauge } from '../../sim/control/gauge.ts'
import { type GaugeOptions, gaugeOf } from '../blocks.ts'

const PERIOD = 5e-5
const clean: GaugeOptions = {
  bandwidth: 1000,
  gainError: 0,
  offset: 0,
  drift: 0,
  noise: 0,
  resolution: 0,
  fingerMass: 0,
}
const make = (change: Partial<GaugeOptions> = {}, seed = 1) => gaugeOf({ ...clean, ...change }, PERIOD, seed)
function settled(gauge: Gauge, force: number, acceleration = 0): Gauge {
  for (let n = 0; n < 10_000; n++) gauge.feel(force, acceleration)
  return gauge
}

describe('Gauge', () => {
  it('reads the force once it has settled, and falls behind it by its bandwidth before', () => {
    expect(settled(make(), 20).read(0)).toBeCloseTo(20, 9)
    const gauge = make()
    for (let n = 0; n < 20; n++) gauge.feel(20, 0) // one time constant
    // Sampled twenty times in it the lag is (1 + 1/20)⁻²⁰ in place of e⁻¹ (backward Euler, closed form).
    expect(gauge.read(0)).toBeCloseTo(20 * (1 - 1.05 ** -20), 9)
  })

  it('has an error of gain, an offset and a drift', () => {
    expect(settled(make({ gainError: 0.02, offset: -0.5, drift: 0.1 }), 20).read(3)).toBeCloseTo(20.4 - 0.5 + 0.3, 9)
  })

  it('feels the inertia of the finger before it', () => {
    expect(settled(make({ fingerMass: 0.03 }), 0, 40).read(0)).toBeCloseTo(1.2, 9)
  })

  it('reads in steps of its resolution', () => {
    expect(settled(make({ resolution: 0.5 }), 20.3).read(0)).toBe(20.5)
  })

  it('adds noise of the given rms, the same from the same seed', () => {
    const readings = (seed: number) => {
      const gauge = settled(make({ noise: 0.2 }, seed), 10)
      return Array.from({ length: 20_000 }, () => gauge.read(0) - 10)
    }
    const list = readings(1)
    // Three times the standard error of an rms of so many (closed form).
    const rms = Math.sqrt(list.reduce((sum, value) => sum + value ** 2, 0) / list.length)
    expect(Math.abs(rms / 0.2 - 1)).toBeLessThan(3 / Math.sqrt(2 * list.length))
    expect(readings(1)).toEqual(list)
    expect(readings(2)).not.toEqual(list)
  })
})
