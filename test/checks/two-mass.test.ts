import { describe, expect, it } from 'vitest'
import { axisOf, contactsOf, type Scenario } from '../../sim/index.ts'
import { FRICTIONLESS, held, IDEAL, runOpenLoop, scenarioOf } from './support.ts'

/**
 * Winding, motor side, transmission and jaw as one linear system, driven by the voltage that the run recorded: current i, motor
 * side x and v, jaw y and w. The voltage is constant over a sample, so the matrix exponential solves it exactly.
 */
function exactTravel(scenario: Scenario, voltages: Float64Array) {
  const { motor, transmission: t } = scenario.actuator
  const axis = axisOf(scenario.actuator)
  const K = axis.forcePerAmpere
  const M = axis.mass
  const m = contactsOf(scenario) * scenario.jaws.mass
  const { stiffness: k, damping: d, viscous: b } = t
  const L = motor.inductance
  const sample = held(
    [
      [-motor.resistance / L, 0, -K / L, 0, 0],
      [0, 0, 1, 0, 0],
      [K / M, -k / M, -(b + d) / M, k / M, d / M],
      [0, 0, 0, 0, 1],
      [0, k / m, d / m, -k / m, -d / m],
    ],
    [1 / L, 0, 0, 0, 0],
    1 / scenario.drive.currentRate,
  )
  let state = [0, 0, 0, 0, 0]
  return Array.from(voltages, (voltage) => {
    state = sample.next(state, voltage)
    return state
  })
}

const soft = { ...FRICTIONLESS, viscous: 3, bristleStiffness: 1000, stiffness: 2e4, damping: 2 }
const free = {
  jaws: { opening: 0.6, stroke: 0.3, mass: 0.05 },
  part: { width: 0.01 },
  run: { duration: 0.1 },
}

const AXES = {
  direct: {
    kind: 'direct',
    motor: { movingMass: 0.2, forceConstant: 12, thermal: { windingTime: 1e5 } },
    transmission: { ...soft, carriageMass: 0.1 },
  },
  screw: {
    kind: 'screw',
    motor: { inertia: 2e-7, torqueConstant: 0.02, thermal: { windingTime: 1e5 } },
    transmission: { ...soft, lead: 0.005, threadFriction: 0, carriageMass: 0.1 },
  },
  rack: {
    kind: 'rack',
    motor: { inertia: 1e-6, torqueConstant: 0.03, thermal: { windingTime: 1e5 } },
    transmission: { ...soft, pinionRadius: 0.01, gearRatio: 4, efficiency: 1, carriageMass: 0.1 },
  },
}

/** Largest error of each recorded state over its own largest value. */
function errors(kind: keyof typeof AXES, step: number) {
  const scenario = scenarioOf(IDEAL, free, { actuator: AXES[kind] }, { run: { step } })
  const current = (time: number) => (time < 0.03 ? 1 : time < 0.06 ? -1.5 : 0.5)
  const { traces, events } = runOpenLoop(scenario, current)
  expect(events.unstable).toBeNull()
  const exact = exactTravel(scenario, traces.voltage)
  const columns = [traces.current, traces.motorTravel, null, traces.travel, traces.speed]
  return columns.flatMap((column, c) => {
    if (!column) return []
    const size = Math.max(...exact.map((state) => Math.abs(state[c]!)))
    return [Math.max(...exact.map((state, k) => Math.abs(state[c]! - column[k]!))) / size]
  })
}

describe('two-mass axis with its winding against the matrix exponential (closed form of the linear system)', () => {
  it.each(Object.keys(AXES) as (keyof typeof AXES)[])(
    '%s: current, motor side, jaw and jaw speed within 0.1 %',
    (kind) => {
      for (const error of errors(kind, 2.5e-7)) expect(error).toBeLessThan(1e-3)
    },
  )

  it('is of first order: half the step, half the error', () => {
    const coarse = errors('direct', 5e-6)
    const fine = errors('direct', 2.5e-6)
    for (const [c, error] of coarse.entries()) {
      expect(error / fine[c]!).toBeGreaterThan(1.8)
      expect(error / fine[c]!).toBeLessThan(2.2)
    }
  })
})

describe('resonance of 0.3 kg and 0.1 kg on 20 kN/m: √(k (1/m1 + 1/m2))/2π = 82.19 Hz (closed form)', () => {
  it('rings at it after a short push', () => {
    const scenario = scenarioOf(IDEAL, free, {
      actuator: {
        ...AXES.direct,
        transmission: { ...AXES.direct.transmission, damping: 0, viscous: 0 },
      },
      events: { powerLoss: { time: 0.002, windings: 'open' } },
    })
    const { traces } = runOpenLoop(scenario, () => 3)
    const crossings: number[] = []
    for (let k = 60; k < traces.time.length; k++) {
      const before = traces.motorTravel[k - 1]! - traces.travel[k - 1]!
      const after = traces.motorTravel[k]! - traces.travel[k]!
      if (before < 0 && after >= 0) crossings.push(traces.time[k - 1]! + (5e-5 * before) / (before - after))
    }
    const cycles = crossings.length - 1
    expect(cycles).toBeGreaterThan(5)
    expect(cycles / (crossings[cycles]! - crossings[0]!)).toBeCloseTo(82.18726, 3)
  })
})
