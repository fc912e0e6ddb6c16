import { describe, expect, it } from 'vitest'
import { COPPER_COEFFICIENT, type Heat } from '../../sim/axis/heat.ts'
import { heatOf } from '../blocks.ts'

const options = {
  windingResistance: 1.5,
  windingTime: 15,
  housingResistance: 3,
  housingTime: 600,
  ambient: 25,
  magnetCoefficient: -0.0011,
}

function run(heat: Heat, loss: number, time: number, step: number): Heat {
  for (let n = 0; n < Math.round(time / step); n++) heat.step(loss, step)
  return heat
}

describe('Heat', () => {
  it('starts at the ambient temperature and stays there without loss', () => {
    const heat = run(heatOf({ ...options, ambient: 40 }), 0, 100, 0.1)
    expect([heat.state.winding, heat.state.housing]).toEqual([40, 40])
  })

  it('settles at the sum of both resistances times the loss', () => {
    const heat = run(heatOf(options), 10, 20_000, 1)
    expect(heat.state.housing).toBeCloseTo(25 + 30, 6)
    expect(heat.state.winding).toBeCloseTo(25 + 45, 6)
  })

  it('warms the winding with its own time constant while the housing is still cold', () => {
    const heat = run(heatOf({ ...options, housingTime: 1e6 }), 10, 15, 0.001)
    expect(heat.state.winding - 25).toBeCloseTo(15 * (1 - Math.exp(-1)), 2)
  })

  it('keeps the energy: what went in is stored or has left through the housing', () => {
    const heat = heatOf(options)
    let left = 0
    for (let n = 0; n < 10_000; n++) {
      heat.step(20, 0.01)
      left += ((heat.state.housing - 25) / 3) * 0.01
    }
    const stored = (heat.state.winding - 25) * (15 / 1.5) + (heat.state.housing - 25) * (600 / 3)
    expect((stored + left) / (20 * 100)).toBeCloseTo(1, 6)
  })

  it('raises the resistance and weakens the magnets', () => {
    const heat = run(heatOf(options), 10, 20_000, 1)
    expect(heat.resistance).toBeCloseTo(1 + COPPER_COEFFICIENT * 45, 6)
    expect(heat.flux).toBeCloseTo(1 - 0.0011 * 30, 6)
  })

  it('stays between ambient and the settled temperature at the edges of the allowed ranges', () => {
    for (const windingResistance of [0.001, 1000])
      for (const windingTime of [0.05, 1e5])
        for (const housingResistance of [0.001, 1000])
          for (const housingTime of [0.5, 1e6]) {
            const heat = heatOf({ ...options, windingResistance, windingTime, housingResistance, housingTime })
            for (let n = 0; n < 200; n++) {
              heat.step(10, 0.02)
              expect(heat.state.winding).toBeGreaterThanOrEqual(25 - 1e-9)
              expect(heat.state.winding).toBeLessThanOrEqual(
                25 + 10 * (windingResistance + housingResistance) * (1 + 1e-9),
              )
              expect(heat.state.housing).toBeGreaterThanOrEqual(25 - 1e-9)
              expect(heat.state.housing).toBeLessThanOrEqual(25 + 10 * housingResistance * (1 + 1e-9))
            }
          }
  })

  it('never turns the magnets round', () => {
    const hot = run(heatOf({ ...options, magnetCoefficient: -0.01 }), 100, 5000, 1)
    expect(hot.flux).toBe(0)
  })
})
