import { describe, expect, it } from 'vitest'
import { AXIS_PRESETS, allAxes, fitAxis, PRESETS } from '../../sim/index.ts'
import { make } from '../scenario/make.ts'

/** Of annealed copper (IEC 60028), taken from 25 °C on. */
const ALPHA = 0.00393

describe('another axis', () => {
  it('brings the heat data of its own motor, and none is left of the one before', () => {
    const scenario = make(PRESETS[0]!.scenario, { 'actuator.motor.thermal.windingResistance': 9.87 })
    for (const { actuator } of AXIS_PRESETS) {
      const fitted = fitAxis(scenario, actuator)
      if (fitted.ok) expect(fitted.scenario.actuator.motor.thermal).toEqual(actuator.motor.thermal)
    }
  })

  it('stands in the air that is around the old one', () => {
    const warm = make(PRESETS[0]!.scenario, { 'actuator.motor.thermal.ambient': 45 })
    const fitted = fitAxis(warm, AXIS_PRESETS[0]!.actuator)
    expect(fitted.ok && fitted.scenario.actuator.motor.thermal.ambient).toBe(45)
  })

  it('has heat data that carry its continuous current off, with at most two fifths to spare (closed form)', () => {
    for (const { id, actuator } of allAxes()) {
      const { resistance, continuousCurrent, thermal } = actuator.motor
      const hot = resistance * (1 + ALPHA * (thermal.limit - 25))
      const whole = thermal.windingResistance + thermal.housingResistance
      const lasting = Math.sqrt((thermal.limit - thermal.ambient) / (hot * whole))
      expect(lasting / continuousCurrent, id).toBeGreaterThan(1)
      expect(lasting / continuousCurrent, id).toBeLessThan(1.4)
    }
  })
})
