import { describe, expect, it } from 'vitest'
import { simulatedSteps, withoutFriction } from '../../sim/ask/simulated-step.ts'
import { LOOPS, PRESETS, type Scenario } from '../../sim/index.ts'

/** A bench whose measurements have no steps and no noise, without dead band and backlash: what the linear loops leave out. */
function fine(scenario: Scenario): Scenario {
  const { actuator, sensors, strategies } = scenario
  return {
    ...scenario,
    actuator: { ...actuator, transmission: { ...actuator.transmission, backlash: 0 } } as Scenario['actuator'],
    drive: { ...scenario.drive, currentResolution: 0, currentNoise: 0 },
    sensors: { encoder: { ...sensors.encoder, resolution: 0 }, gauge: { ...sensors.gauge, noise: 0, resolution: 0 } },
    strategies: { ...strategies, sensedForce: { ...strategies.sensedForce, deadband: 0 } },
  }
}

const TEAPOT = PRESETS[0]!.scenario

describe('without friction and steps of measurement', () => {
  for (const { id, scenario } of PRESETS) {
    for (const loop of LOOPS) {
      it(`${id}: the simulated ${loop} loop answers within 2 % of the linear one at every working point`, () => {
        const { steps } = simulatedSteps(fine(scenario), loop, { friction: false })
        expect(steps).toHaveLength(loop === 'force' ? 3 : 4)
        for (const { deviation, bounds, size, step } of steps) {
          expect(bounds).toEqual([])
          expect(size).toBeGreaterThan(0)
          expect(step.value.some((value) => value > 0.1)).toBe(true)
          expect(deviation).toBeLessThan(0.02)
        }
      })
    }
  }
})

describe('what leaves the linear range', () => {
  const bounds = (scenario: Scenario, loop: 'position' | 'velocity' | 'force', scale?: number) =>
    simulatedSteps(scenario, loop, { friction: false, scale }).steps.find((s) => s.workingPoint === 'nominal')!.bounds

  it('is the current limit for a large step of position, the bridge with little voltage, the jaw that lifts off', () => {
    expect(bounds(fine(TEAPOT), 'position', 50)).toContain('current')
    const weak = { ...TEAPOT, drive: { ...TEAPOT.drive, busVoltage: 4 } }
    expect(bounds(fine(weak), 'position', 50)).toContain('voltage')
    expect(bounds(fine(TEAPOT), 'velocity', -20)).toContain('contact')
  })

  it('is dead band, speed limit or approach acceleration of the force loop, and the part that breaks', () => {
    expect(bounds(TEAPOT, 'force')).toContain('dead-band')
    expect(bounds(fine(TEAPOT), 'force', 100)).toContain('speed')
    const { sensedForce } = TEAPOT.strategies
    const quick = { ...TEAPOT.strategies, sensedForce: { ...sensedForce, speedLimit: 1 } }
    expect(
      bounds(fine({ ...TEAPOT, strategies: quick, approach: { ...TEAPOT.approach, acceleration: 0.1 } }), 'force', 10),
    ).toContain('acceleration')
    expect(bounds(fine(TEAPOT), 'force', 20)).toContain('part')
  })
})

describe('friction', () => {
  it('on, makes the position loop answer otherwise than the linear one', () => {
    const [, rough] = simulatedSteps(TEAPOT, 'position', { friction: true }).steps
    const [, smooth] = simulatedSteps(TEAPOT, 'position', { friction: false }).steps
    expect(rough!.deviation).toBeGreaterThan(0.2)
    expect(smooth!.deviation).toBeLessThan(0.1)
  })

  it('off, leaves viscous friction and every other key', () => {
    const { transmission, ...rest } = withoutFriction(TEAPOT).actuator
    expect(transmission).toEqual({ ...TEAPOT.actuator.transmission, coulomb: 0, breakaway: 0, threadFriction: 0 })
    expect({ ...rest, transmission: TEAPOT.actuator.transmission }).toEqual(TEAPOT.actuator)
  })
})

it('leaves out loops that are unstable or have no crossover', () => {
  const wild = { ...TEAPOT, servo: { ...TEAPOT.servo, kd: 800 } }
  expect(simulatedSteps(wild, 'position', { friction: false }).steps.map((s) => s.workingPoint)).not.toContain('free')
  expect(simulatedSteps(TEAPOT, 'force', { friction: false }).steps.map((s) => s.workingPoint)).not.toContain('free')
})
