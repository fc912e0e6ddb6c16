import { describe, expect, it } from 'vitest'
import { PRESETS, type Scenario, simulateGrip, strategyOf } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { fastestOf } from '../../sim/model/step.ts'
import { make } from '../scenario/make.ts'

const benchOf = (scenario: Scenario) => modelOf(scenario, strategyOf('current-clamp')).bench
const stepsIn = (scenario: Scenario) => benchOf(scenario).axis.steps
/** Under a step of its own, which no rate can make too small. */
const fastest = (scenario: Scenario) =>
  fastestOf(benchOf(make(scenario, { 'run.step': 1 / scenario.drive.currentRate })))

describe('steps in a period of the current loop', () => {
  it('takes the step that the scenario names', () => {
    for (const parts of [1, 2, 7, 50]) expect(stepsIn(make({}, { 'run.step': 5e-5 / parts }))).toBe(parts)
  })

  it('chooses at most 10 µs, and at most a tenth of the stiffest mode', () => {
    expect(stepsIn(make())).toBe(5)
    for (const scenario of [
      make({}, { 'actuator.transmission.stiffness': 1e9 }),
      make({}, { 'jaws.padStiffness': 1e9, 'part.stiffness': 1e9, 'part.mass': 0.01 }),
      make({}, { 'part.exponent': 1.5, 'part.stiffness': 1e12 }),
      make({}, { 'drive.currentRate': 8000, 'servo.rate': 4000 }),
    ]) {
      const step = 1 / scenario.drive.currentRate / stepsIn(scenario)
      expect(step).toBeLessThanOrEqual(1e-5 * (1 + 1e-9))
      expect(step * fastest(scenario)).toBeLessThanOrEqual(0.1 * (1 + 1e-9))
      // One substep fewer would be too coarse.
      const coarser = 1 / scenario.drive.currentRate / (stepsIn(scenario) - 1)
      expect(coarser > 1e-5 * (1 + 1e-9) || coarser * fastest(scenario) > 0.1).toBe(true)
    }
  })

  it('refuses a run that would take too many steps, and says how long it may be', () => {
    const long = make({}, { 'actuator.transmission.damping': 1e5, 'jaws.mass': 0.001, 'run.duration': 600 })
    expect(() => stepsIn(long)).toThrow(RangeError)
    const message = (() => {
      try {
        return String(stepsIn(long))
      } catch (error) {
        return (error as Error).message
      }
    })()
    expect(message).toMatch(
      /^run\.duration: given 600 s, which takes \S+ steps of \S+ s for the stiffest mode, allowed at most \S+ s/,
    )
    const allowed = Number(/at most (\S+) s/.exec(message)![1])
    expect(stepsIn(make(long, { 'run.duration': 0.99 * allowed }))).toBeGreaterThan(100)
  })
})

describe('the fastest rate of all elements', () => {
  it('knows every spring, damper and mass that can be stiffest', () => {
    const base = fastest(make())
    const stiffer: Record<string, unknown>[] = [
      { 'actuator.transmission.stiffness': 1e10 },
      { 'actuator.transmission.damping': 1e6 },
      { 'actuator.transmission.viscous': 1e6 },
      { 'actuator.transmission.bristleStiffness': 1e9, 'actuator.motor.inertia': 1e-8 },
      { 'actuator.transmission.threadFriction': 0.3, 'actuator.motor.torqueConstant': 10 },
      { 'jaws.mass': 0.0001 },
      { 'jaws.padStiffness': 1e9, 'part.stiffness': 1e9 },
      { 'part.mass': 1e-5 },
    ]
    for (const edits of stiffer) expect(fastest(make({}, edits)), JSON.stringify(edits)).toBeGreaterThan(1.5 * base)
  })

  it('knows what a linear motor adds: cogging, and its force constant against its inductance', () => {
    const direct = (motor: object = {}) => fastest(make({ actuator: { kind: 'direct', motor } }))
    expect(direct({ cogging: { amplitude: 1e4, period: 1e-4 } })).toBeCloseTo(
      Math.sqrt((1e4 * 2 * Math.PI) / 1e-4 / 0.27),
      3,
    )
    expect(direct({ forceConstant: 500, inductance: 1e-6 })).toBeCloseTo(Math.sqrt(500 ** 2 / 1e-6 / 0.27), 3)
  })

  it('counts both contacts of a light part, also against an anvil', () => {
    const light = (layout: string) => fastest(make({ jaws: { layout, mass: 100 }, part: { mass: 1e-4 } }))
    expect(light('anvil') / light('mirrored')).toBeCloseTo(1, 3)
  })
})

describe('step error', () => {
  it('is told where it is asked for, and small on a preset', () => {
    const { scenario } = PRESETS[0]!
    const { result } = simulateGrip(scenario, 'current-clamp', { stepError: true })
    expect(result.stepError).toBeGreaterThan(0)
    expect(result.stepError).toBeLessThan(0.01)
    expect(simulateGrip(scenario, 'current-clamp').result.stepError).toBeNull()
  })
})
