/** What an axis is under a part, by hand: magnets lose a share of their flux for each kelvin, and every force with it. */
import { describe, expect, it } from 'vitest'
import { axisEfforts, axisFigures, driveResolutions, scalesFrom } from '../../sim/index.ts'
import { scenarioOf } from '../checks/support.ts'

const COPPER = 0.00393
const MAGNETS = -0.002

const at = (ambient: number) =>
  scenarioOf({
    actuator: {
      kind: 'direct',
      motor: {
        forceConstant: 20,
        resistance: 2,
        continuousCurrent: 2,
        peakCurrent: 6,
        thermal: { ambient, windingResistance: 3, housingResistance: 2, magnetCoefficient: MAGNETS },
      },
      transmission: { coulomb: 1, breakaway: 1, viscous: 0 },
    },
    drive: { busVoltage: 24 },
    servo: { currentLimit: 6 },
    strategies: { currentClamp: { limit: 2 } },
  })

describe.each([25, 65])('an axis in air of %d °C', (ambient) => {
  const scenario = at(ambient)
  const cold = 20 * (1 + MAGNETS * (ambient - 25))

  it('holds for ever what its own heat leaves of the magnets', () => {
    // P = I²·R·(1 + α·(T_w − 25)), T_w = ambient + 5·P, and the housing lies at ambient + 2·P.
    const loss = (8 * (1 + COPPER * (ambient - 25))) / (1 - 8 * COPPER * 5)
    const warm = 20 * (1 + MAGNETS * (ambient + 2 * loss - 25))
    expect(axisEfforts(scenario, scenario.actuator).continuous).toBeCloseTo((warm * 2 - 1) / 2, 9)
  })

  it('peaks, and runs freely, with the magnets of a motor from cold', () => {
    const { peak, topSpeed } = axisFigures(scenario, scenario.actuator)
    expect(peak).toBeCloseTo((cold * 6 - 1) / 2, 9)
    expect(topSpeed).toBeCloseTo((24 - 2 / cold) / cold, 9) // 1 N of friction takes 1/K
  })

  it('gives so much for a unit of current', () => {
    const scales = { ...scalesFrom(scenario), amperesPerUnit: 0.01 }
    const { force } = driveResolutions(scenario, scales).find(({ id }) => id === 'current')!
    expect(force).toBeCloseTo((0.01 * cold) / 2, 12)
  })
})
