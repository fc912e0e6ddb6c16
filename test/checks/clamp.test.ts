import { describe, expect, it } from 'vitest'
import { axisOf, contactsOf, simulateGrip, strategyOf } from '../../sim/index.ts'
import { FRICTIONLESS, IDEAL, scenarioOf } from './support.ts'

/** Force of one ampere at the jaw, by hand from the data of each axis: Kt·2π/lead, Kt·i/r, Kf. */
const AXES = [
  {
    name: 'screw, 5 mm lead',
    newtons: (0.02 * 2 * Math.PI) / 0.005,
    actuator: {
      kind: 'screw',
      motor: { torqueConstant: 0.02, inertia: 3e-7 },
      transmission: { lead: 0.005, threadFriction: 0 },
    },
  },
  {
    name: 'rack, 8 mm pinion behind 3:1',
    newtons: (0.05 * 3) / 0.008,
    actuator: {
      kind: 'rack',
      motor: { torqueConstant: 0.05, inertia: 2e-6 },
      transmission: { pinionRadius: 0.008, gearRatio: 3, efficiency: 1 },
    },
  },
  { name: 'direct', newtons: 12, actuator: { kind: 'direct', motor: { forceConstant: 12, movingMass: 0.2 } } },
]

const clamp = (actuator: object, layout: string, transmission: object = {}) =>
  scenarioOf(
    IDEAL,
    {
      actuator,
      jaws: { layout, opening: 0.08, stroke: 0.05 },
      part: { stiffness: 5e4, damping: 2 },
      approach: { speed: 0.02, overtravel: 0.01 },
      servo: { kp: 2000, ki: 0, kd: 60 },
      strategies: { currentClamp: { limit: 2.5 } },
      run: { duration: 2 },
    },
    { actuator: { transmission: { ...FRICTIONLESS, ...transmission } } },
  )

describe('settled force of a current clamp on an axis without friction: Kt·I/c shared by the contacts (statics)', () => {
  for (const { name, newtons, actuator } of AXES)
    it.each(['mirrored', 'anvil'])(`${name}, %s`, (layout) => {
      const scenario = clamp(actuator, layout)
      const { metrics, verdict } = simulateGrip(scenario, 'current-clamp').result
      expect(verdict).not.toBe('unstable')
      const force = (newtons * 2.5) / (layout === 'mirrored' ? 2 : 1)
      expect(metrics.settledCurrent).toBeCloseTo(2.5, 3)
      expect(metrics.settledForce! / force).toBeGreaterThan(0.995)
      expect(metrics.settledForce! / force).toBeLessThan(1.005)
      // and the conversion that the bench shows says the same
      expect(strategyOf('current-clamp').forceOf(scenario).expected / force).toBeCloseTo(1, 9)
      expect(strategyOf('current-clamp').settingFor(scenario, force)).toBeCloseTo(2.5, 9)
    })
})

describe('with friction the force comes to rest inside the band (statics): (K I ∓ F)/contacts, times the efficiency of the thread', () => {
  it.each([
    ['Coulomb friction', AXES[2]!, { coulomb: 4, breakaway: 4, viscous: 60 }],
    ['friction of the thread', AXES[0]!, { threadFriction: 0.1, viscous: 200 }],
    ['both', AXES[0]!, { threadFriction: 0.1, coulomb: 5, breakaway: 5, viscous: 200 }],
  ])('%s', (_name, { actuator }, friction) => {
    const scenario = clamp(actuator, 'mirrored', friction)
    const { settledForce, settledCurrent } = simulateGrip(scenario, 'current-clamp').result.metrics
    const axis = axisOf(scenario.actuator)
    const t = scenario.actuator.transmission
    const push = axis.forcePerAmpere * settledCurrent!
    const least = (push - t.coulomb) / (contactsOf(scenario) * (1 + axis.raise))
    const most = (push + t.coulomb) / (contactsOf(scenario) * (1 - axis.lower))
    expect(settledForce!).toBeGreaterThan(least * 0.995)
    if (axis.lower < 1) expect(settledForce!).toBeLessThan(most * 1.005)
  })
})
