import { describe, expect, it } from 'vitest'
import { sideOf } from '../blocks.ts'
import { bareJaws, runOpenLoop, scenarioOf } from './support.ts'

/**
 * Standard linear solid: a spring k∞ beside a Maxwell branch k1 with τ = c/k1 (textbook closed forms, e.g. Findley, Lai and
 * Onaran, Creep and Relaxation of Nonlinear Viscoelastic Materials, 1976, ch. 5, from memory). Here k∞ = k1 = 10 N/mm of the
 * whole part, τ 0.5 s: K = 20 N/mm with a relaxing share of one half.
 */
const TAU = 0.5
const solid = (step: number, exponent = 1) =>
  sideOf({
    exponent,
    stiffness: exponent === 1 ? 20e3 : 20e3 / Math.sqrt(1e-3),
    padStiffness: 1e13,
    damping: 0,
    relaxationFraction: 0.5,
    relaxationTime: TAU,
    yieldForce: Infinity,
    step,
  })

describe('squeezed by 1 mm and held: F = x0 (k∞ + k1 e^(−t/τ))', () => {
  it.each([1, 1.5])('exponent %f: 20 → 18.1873, 13.6788, 11.3534, 10.0674 N at 0.1, 0.5, 1, 2.5 s', (exponent) => {
    const step = 1e-5
    const side = solid(step, exponent)
    const expected = new Map([
      [0.1, 18.1873],
      [0.5, 13.6788],
      [1, 11.3534],
      [2.5, 10.0674],
    ])
    expect(side.step(0.5e-3, 0)).toBeCloseTo(20, 3)
    for (let n = 1; n <= 2.5 / step; n++) {
      const force = side.step(0.5e-3, 0)
      const want = expected.get(n * step) ?? expected.get(Number((n * step).toFixed(5)))
      if (want) expect(force / want).toBeCloseTo(1, 3)
    }
  })
})

describe('squeezed in a sine about a bias: K* = k∞ + k1 jωτ/(1 + jωτ)', () => {
  it.each([
    [0.2, 10.1474, 0.098039],
    [2, 15.8114, 0.333333],
    [20, 19.9256, 0.049751],
  ])('ω %f rad/s: |K*| %f N/mm, loss tangent %f', (omega, modulus, loss) => {
    const perCycle = 40_000
    const step = (2 * Math.PI) / omega / perCycle
    const side = solid(step)
    const settle = Math.ceil((10 * TAU) / (perCycle * step)) * perCycle
    let inPhase = 0
    let ahead = 0
    for (let n = 0; n < settle + perCycle; n++) {
      const angle = (2 * Math.PI * (n % perCycle)) / perCycle
      const force = side.step(0.5e-3 * (2 + Math.sin(angle)), 0)
      if (n < settle) continue
      inPhase += (2 / perCycle) * force * Math.sin(angle)
      ahead += (2 / perCycle) * force * Math.cos(angle)
    }
    expect(Math.hypot(inPhase, ahead) / modulus).toBeCloseTo(1, 3) // 1 mm of flattening
    expect(ahead / inPhase / loss).toBeCloseTo(1, 2)
  })
})

describe('a current clamp holds the force, so the part creeps: x = F [1/k∞ − (1/k∞ − 1/(k∞ + k1)) e^(−t/τc)], τc = τ (k∞ + k1)/k∞', () => {
  it('10 N a side: 500 µm at once, 816 µm after 1 s, 932 µm after 2 s', () => {
    const scenario = scenarioOf(bareJaws(0.2), {
      part: { stiffness: 20e3, relaxation: { fraction: 0.5, time: TAU } },
      jaws: { opening: 0.07 + 2e-7 },
      actuator: { motor: { movingMass: 0.1 }, transmission: { viscous: 60, stiffness: 1e7, damping: 100 } },
      run: { duration: 4 },
    })
    const { traces } = runOpenLoop(scenario, () => 20)
    for (const [time, micrometres] of [
      [0.5, 696.735],
      [1, 816.06],
      [2, 932.332],
    ] as const) {
      const row = traces.time.findIndex((t) => t >= time)
      // both jaws together flatten the part; two pads of 1e9 N/m give with it
      const flattening = 2 * (traces.travel[row]! - 1e-7 - 10 / 1e9)
      expect((flattening * 1e6) / micrometres).toBeGreaterThan(0.995)
      expect((flattening * 1e6) / micrometres).toBeLessThan(1.005)
    }
  })
})
