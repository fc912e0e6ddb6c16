/** Two axes without dry friction, noise and steps of measurement, whose loops the simulation can be held against. */
import type { Scenario } from '../../sim/index.ts'
import { ripple } from './signals.ts'
import { IDEAL, scenarioOf, type Tree } from './support.ts'

const CALM: Tree = {
  ...IDEAL,
  drive: { currentResolution: 0, currentNoise: 0, busVoltage: 2000 },
  servo: { currentLimit: 9 },
  sensors: { encoder: { resolution: 0 }, gauge: { noise: 0, resolution: 0 } },
  strategies: { sensedForce: { deadband: 0 } },
}

/** Ball screw, both jaws driven. */
const SCREW_FILE: Tree = {
  actuator: {
    kind: 'screw',
    motor: { thermal: { windingTime: 1e4 } },
    transmission: { coulomb: 0, breakaway: 0, threadFriction: 0, viscous: 40 },
  },
  jaws: { opening: 0.074 },
  part: { stiffness: 150000, damping: 0.3 },
  servo: { kp: 7500, ki: 90000, kd: 45, currentLimit: 9 },
  strategies: { sensedForce: { kp: 0.0006, ki: 0.004, target: 30 } },
  run: { duration: 2 },
}

/** Voice coil against an anvil: the part moves between its two contacts, its surface is rounded, the force loop has all three terms. */
const COIL_FILE: Tree = {
  actuator: {
    kind: 'direct',
    motor: {
      resistance: 3.4,
      inductance: 0.0011,
      forceConstant: 11,
      movingMass: 0.085,
      thermal: { windingTime: 1e4, ambient: 60 },
    },
    transmission: { carriageMass: 0.09, coulomb: 0, breakaway: 0, viscous: 3, stiffness: 3e6, damping: 60 },
  },
  jaws: { layout: 'anvil', mass: 0.045, opening: 0.084, stroke: 0.015, padStiffness: 25000 },
  part: { width: 0.08, mass: 0.042, stiffness: 4e6, exponent: 1.5, damping: 0.4 },
  drive: { currentResolution: 0, currentNoise: 0, busVoltage: 2000, currentBandwidth: 6000, backEmfFeedforward: 0.5 },
  servo: { kp: 2800, ki: 60000, kd: 11, currentLimit: 3 },
  sensors: { gauge: { bandwidth: 2000, gainError: 0.05 } },
  strategies: {
    sensedForce: {
      target: 6,
      kp: 0.002,
      ki: 0.02,
      kd: 2e-6,
      velocity: { kp: 15, ki: 900 },
    },
  },
  run: { duration: 2 },
}

const over = (file: Tree, more: Tree) =>
  scenarioOf({}, structuredClone(CALM), structuredClone(file), structuredClone(more))

/** With more laid over them. */
export const screw = (more: Tree = {}): Scenario => over(SCREW_FILE, more)
export const coil = (more: Tree = {}): Scenario => over(COIL_FILE, more)

/** The drive without limits, so that an oscillation grows as a linear one does. */
export const boundless = (scenario: Scenario): Scenario => ({
  ...scenario,
  servo: { ...scenario.servo, currentLimit: 1e3 },
  approach: { ...scenario.approach, acceleration: 1e6 },
  strategies: { ...scenario.strategies, sensedForce: { ...scenario.strategies.sensedForce, speedLimit: 1e3 } },
})

/** Forty cycles of an oscillation [rad]: long enough to see it grow, too short to let it reach the end of contact. */
export const CYCLES = 40 * 2 * Math.PI

/** Growth of the ripple of what the controller gives, last fifth over second fifth. */
export function growth(values: readonly number[]): number {
  const fifth = Math.floor(values.length / 5)
  return ripple(values.slice(-fifth)) / ripple(values.slice(fifth, 2 * fifth))
}
