import { describe, expect, it } from 'vitest'
import { dutyTemperatures } from '../../sim/axis/cooling.ts'
import { simulateGrip, strategyOf } from '../../sim/index.ts'
import { FRICTIONLESS, IDEAL, scenarioOf } from './support.ts'

const clamp = strategyOf('current-clamp')

/** A direct drive of 12 N/A that presses with 2.5 A, its magnets losing 0.2 % of their flux for each kelvin over 25 °C. */
const press = (ambient: number, offset: number, layout: string, run: object = {}, friction: object = {}) =>
  scenarioOf(IDEAL, {
    actuator: {
      kind: 'direct',
      motor: {
        forceConstant: 12,
        movingMass: 0.2,
        resistance: 2,
        thermal: { ambient, magnetCoefficient: -0.002, windingResistance: 2, housingResistance: 5 },
      },
      transmission: { ...FRICTIONLESS, ...friction },
    },
    drive: { currentOffset: offset },
    jaws: { layout, opening: 0.08, stroke: 0.05 },
    part: { stiffness: 5e4, damping: 2 },
    approach: { speed: 0.02, overtravel: 0.01 },
    servo: { kp: 2000, ki: 0, kd: 60 },
    strategies: { currentClamp: { limit: 2.5 } },
    run: { duration: 2, ...run },
  })

describe('a whole grip with an offset and warm magnets settles where statics have it: 12·(1 − 0.002·(T − 25))·(2.5 − I_0)', () => {
  it.each([
    [25, 0.4, 'mirrored'],
    [25, -0.4, 'anvil'],
    [95, 0, 'mirrored'],
    [-15, 0.3, 'mirrored'],
    [95, -0.3, 'anvil'],
  ])('%f °C, %f A, %s', (ambient, offset, layout) => {
    const scenario = press(ambient, offset, layout)
    const force = (12 * (1 - 0.002 * (ambient - 25)) * (2.5 - offset)) / (layout === 'mirrored' ? 2 : 1)
    const { metrics } = simulateGrip(scenario, 'current-clamp').result
    expect(metrics.settledForce! / force).toBeGreaterThan(0.995) // what two seconds warm, and the settling
    expect(metrics.settledForce! / force).toBeLessThan(1.005)
    expect(clamp.forceOf(scenario).expected / force).toBeCloseTo(1, 9)
    expect(clamp.settingFor(scenario, force)).toBeCloseTo(2.5, 9)
  })

  it('with friction it comes to rest inside the band', () => {
    for (const offset of [-0.5, 0, 0.5]) {
      const scenario = press(80, offset, 'mirrored', {}, { coulomb: 3, breakaway: 4, viscous: 60 })
      const { least, most } = clamp.forceOf(scenario)
      const { settledForce } = simulateGrip(scenario, 'current-clamp').result.metrics
      expect(settledForce!).toBeGreaterThan(0.995 * least)
      expect(settledForce!).toBeLessThan(1.005 * most!)
    }
  })
})

describe('magnets of a duty', () => {
  const options = { windingResistance: 2, windingTime: 20, housingResistance: 5, housingTime: 300, ambient: 35 }

  it.each([
    [1.5, 0.6],
    [2.2, 0.3],
    [0.5, 1],
  ])('%f A for a share of %f: both nodes stepped until nothing changes (explicit Euler, by hand)', (current, share) => {
    const { windingResistance, windingTime, housingResistance, housingTime, ambient } = options
    const [winding, housing] = [windingTime / windingResistance, housingTime / housingResistance]
    const [step, cycle] = [0.01, 5]
    let [w, h] = [ambient, ambient]
    let [sumW, sumH, count] = [0, 0, 0]
    for (let n = 0; n < 4e5; n++) {
      const on = (n * step) % cycle < share * cycle - 1e-9
      const loss = on ? current * current * 2 * (1 + 0.00393 * (w - 25)) : 0
      const over = (w - h) / windingResistance
      w += (step / winding) * (loss - over)
      h += (step / housing) * (over - (h - ambient) / housingResistance)
      if (n < 3.9e5) continue
      sumW += w
      sumH += h
      count++
    }
    const mean = dutyTemperatures(options, 2, current, share)
    // Loss follows the winding as it swings, the closed form its mean.
    expect(Math.abs((mean.winding - ambient) / (sumW / count - ambient) - 1)).toBeLessThan(0.01)
    expect(Math.abs((mean.housing - ambient) / (sumH / count - ambient) - 1)).toBeLessThan(0.01)
  })

  it('run away where the loss grows faster than it is carried off', () => {
    expect(dutyTemperatures(options, 2, 20, 1)).toEqual({ winding: 535, housing: 535 })
  })

  it('the grip of a duty settles between the least and the expected force', () => {
    const scenario = press(25, 0, 'mirrored', { cycle: 3 })
    const { least, expected } = clamp.forceOf(scenario)
    const { settledForce } = simulateGrip(scenario, 'current-clamp').result.metrics
    expect(least).toBeLessThan(0.97 * expected)
    expect(settledForce!).toBeGreaterThan(0.995 * least)
    expect(settledForce!).toBeLessThan(0.99 * expected)
  })
})
