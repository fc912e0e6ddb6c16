import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Metrics, type Scenario, STRATEGIES, simulateGrip, strategyOf } from '../../sim/index.ts'
import type { GripLoad } from '../../sim/job/grip/load.ts'
import { metricsOf } from '../../sim/job/grip/metrics.ts'
import { modelOf } from '../../sim/model/model.ts'
import { quick } from '../grip/scenarios.ts'

interface Sample {
  near: number
  far: number
  current: number
  speed: number
  travel: number
  /** Of the arm and gravity across the grip [m/s²]. */
  pull: number
  temperature: number
}

const PERIOD = 1 / 20_000
const scenario = (edits: Record<string, unknown> = {}) =>
  quick({
    'run.duration': 0.2,
    'arm.lift': 0.1,
    'arm.moves': [{ start: 0.15, axis: 'across', acceleration: 5, duration: 0.02, jerk: 200 }],
    'part.markForce': 30,
    'part.crackForce': 50,
    ...edits,
  })

/** The figures of a recording; first touch [s] as the plant would tell it. */
function figuresOf(of: Scenario, samples: Sample[], contactTime: number): Metrics {
  const { bench } = modelOf(of, strategyOf('current-clamp'))
  const { axis, arm, figures } = bench
  const load = bench.load as GripLoad
  const peak = Math.max(...samples.map(({ near, far }) => Math.max(near, far)))
  Object.assign(load.state, { contactTime, contactSpeed: 0.05, peak, peakTime: 0.123, hanging: 1 })
  load.slip.state.distance = 0.002
  figures.prepare(samples.length)
  samples.forEach((sample, k) => {
    const { near, far, pull } = sample
    Object.assign(load.state, { nearForce: near, farForce: far, normal: near + far, down: pull, side: 0 })
    const { staticFriction, state: pads } = load.slip
    Object.assign(pads, { asked: (of.part.mass * pull) ** 2, able: (staticFriction * (near + far)) ** 2 })
    axis.winding.state.current = sample.current
    axis.state.motorSpeed = sample.speed
    axis.state.travel = sample.travel
    axis.heat.state.winding = sample.temperature
    arm.at(k * PERIOD)
    figures.sample(k * PERIOD, axis, load, arm, 0, false, 0)
  })
  figures.finish(load)
  return metricsOf({ scenario: of, load, sums: figures.sums, period: bench.period })
}

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const sample = fc.record({
  near: within(0, 40),
  far: within(0, 40),
  current: within(-5, 5),
  speed: within(-0.001, 0.001),
  travel: within(0, 0.01),
  pull: within(0.5, 40),
  temperature: within(20, 90),
})
/** A recording of 0.2 s that repeats a few random samples out of step. */
const recording = fc
  .array(sample, { minLength: 5, maxLength: 60 })
  .map((list) => Array.from({ length: 4000 }, (_, k) => list[(k * 7 + Math.floor(k / 13)) % list.length]!))

const mean = (list: number[]) => list.reduce((sum, value) => sum + value, 0) / list.length
const highest = (list: number[]) => list.reduce((most, value) => Math.max(most, value), -Infinity)
const lowest = (list: number[]) => list.reduce((least, value) => Math.min(least, value), Infinity)

describe('Figures', () => {
  it('are what the full recording says, computed plainly', () => {
    fc.assert(
      fc.property(recording, (samples) => {
        const { part, jaws } = scenario()
        const metrics = figuresOf(scenario(), samples, 0.01)
        const between = (from: number, to: number) =>
          samples.filter((_, k) => k * PERIOD >= from - 1e-12 && k * PERIOD < to - 1e-12)
        const settled = between(0.05, 0.1) // 50 ms before the support goes
        const forces = settled.map(({ near, far }) => (near + far) / 2)
        const force = mean(forces)
        const moving = samples.filter((_, k) => k * PERIOD >= 0.15 - 1e-12 && k * PERIOD <= 0.17 + 1e-12)
        const both = moving.flatMap(({ near, far }) => [near, far])
        const directions = settled.map(({ speed }) => (Math.abs(speed) > 1e-4 ? Math.sign(speed) : 0)).filter(Boolean)
        const peak = highest(samples.flatMap(({ near, far }) => [near, far]))
        const expected: Partial<Metrics> = {
          contactTime: 0.01,
          contactSpeed: 0.05,
          peakForce: peak,
          peakForceTime: 0.123,
          settledForce: force,
          forceRipple: Math.sqrt(mean(forces.map((value) => (value - force) ** 2))),
          settledCurrent: mean(settled.map(({ current }) => current)),
          minForceInMove: lowest(both),
          maxForceInMove: highest(both),
          requiredForce: highest(samples.map(({ pull }) => (part.mass * pull) / (2 * jaws.friction.static))),
          holdMargin:
            lowest(
              samples.map(({ near, far, pull }) => {
                const sum = near + far
                const closed = far === near ? Number.POSITIVE_INFINITY : sum / Math.abs(far - near)
                return Math.min((jaws.friction.static * sum) / (part.mass * pull), closed)
              }),
            ) - 1,
          slipDistance: 0.002,
          damageMargin: 30 / peak - 1,
          peakCurrent: highest(samples.map(({ current }) => Math.abs(current))),
          rmsCurrent: Math.sqrt(mean(samples.map(({ current }) => current ** 2))),
          windingTemperature: highest(samples.map(({ temperature }) => temperature)),
          reversals: directions.filter((value, n) => n > 0 && value !== directions[n - 1]).length / 0.05,
          jawTravel: settled.at(-1)!.travel,
          lostCycles: null,
        }
        for (const [name, value] of Object.entries(expected)) {
          const got = metrics[name as keyof Metrics]
          if (value === null) expect(got, name).toBeNull()
          else expect(got, name).toBeCloseTo(value, 9)
        }
      }),
      { numRuns: 25 },
    )
  })

  it('even the power from the bus out over 10 ms: a step of it is seen as 1 − e^(−t/10 ms) (closed form)', () => {
    const { bench } = modelOf(scenario(), strategyOf('current-clamp'))
    const { axis, arm, figures, load } = bench
    figures.prepare(4000)
    axis.winding.state.current = 2
    figures.sums.latest = 2
    for (let k = 0; k < 200; k++) figures.sample(k * PERIOD, axis, load, arm, 0, false, 24)
    expect(figures.sums.peakPower / (48 * (1 - Math.exp(-1)))).toBeCloseTo(1, 2)
    for (let k = 200; k < 4000; k++) figures.sample(k * PERIOD, axis, load, arm, 0, false, k < 2000 ? 24 : -24)
    expect(figures.sums.peakPower).toBeCloseTo(48, 2)
    expect(figures.sums.power).toBeCloseTo(-48, 2)
  })

  it('measure the grip time from first touch until the force enters its 5 % band for good', () => {
    // Rises to 20 N, overshoots, comes back to stay within 19 to 21 N from 0.045 s on.
    const force = (t: number) =>
      t < 0.02 ? 0 : t < 0.04 ? (t - 0.02) * 1000 : t < 0.045 ? 24 : 20 + 0.5 * Math.sin(1000 * t)
    const samples = Array.from({ length: 4000 }, (_, k) => ({
      near: force(k * PERIOD),
      far: force(k * PERIOD),
      current: 1,
      speed: 0,
      travel: 0,
      pull: 0,
      temperature: 25,
    }))
    expect(figuresOf(scenario(), samples, 0.02).gripTime).toBeCloseTo(0.025, 3)
    const late = samples.map((s, k) => (Math.abs(k * PERIOD - 0.08) < 1e-6 ? { ...s, near: 30, far: 30 } : s))
    expect(figuresOf(scenario(), late, 0.02).gripTime).toBeCloseTo(0.06, 3)
    const outside = (factor: number) =>
      samples.map((s, k) => (Math.abs(k * PERIOD - 0.08) < 1e-6 ? { ...s, near: 20 * factor, far: 20 * factor } : s))
    expect(figuresOf(scenario(), outside(1.06), 0.02).gripTime).toBeCloseTo(0.06, 3)
    expect(figuresOf(scenario(), outside(1.04), 0.02).gripTime).toBeCloseTo(0.025, 3)
    const never = samples.map((s, k) => ({ ...s, near: k % 2 ? 30 : 10, far: k % 2 ? 30 : 10 }))
    expect(figuresOf(scenario(), never, 0.02).gripTime).toBeNull()
  })

  it('see the force of the whole move, from its first sample to its last', () => {
    const still = { current: 0, speed: 0, travel: 0, pull: 0, temperature: 25 }
    for (const [instant, seen] of [
      [0.1495, false],
      [0.1505, true],
      [0.1695, true],
      [0.1705, false],
    ] as const) {
      const samples = Array.from({ length: 4000 }, (_, k) => {
        const spike = Math.abs(k * PERIOD - instant) < 1e-6
        return { ...still, near: spike ? 9 : 5, far: spike ? 1 : 5 }
      })
      const { minForceInMove, maxForceInMove } = figuresOf(scenario(), samples, 0.01)
      expect([minForceInMove, maxForceInMove], `${instant} s`).toEqual(seen ? [1, 9] : [5, 5])
    }
  })

  it('take their settled window before the first of lift, move, power loss and release, else the end', () => {
    const samples = Array.from({ length: 4000 }, (_, k) => ({
      near: k,
      far: k,
      current: 0,
      speed: 0,
      travel: 0,
      pull: 0,
      temperature: 25,
    }))
    const bare = { 'arm.moves': [], 'arm.lift': null }
    const ends: [Record<string, unknown>, number][] = [
      [bare, 0.2],
      [{}, 0.1],
      [{ 'arm.lift': null }, 0.15],
      [{ ...bare, 'events.powerLoss': { time: 0.12, windings: 'open' } }, 0.12],
      [{ ...bare, 'events.release': { time: 0.14 } }, 0.14],
      [{ ...bare, 'arm.lift': 0.02 }, 0.02],
    ]
    for (const [edits, end] of ends) {
      const start = Math.max(0, end - 0.05)
      const middle = (start + end) / 2 / PERIOD - 0.5
      expect(Math.abs(figuresOf(scenario(edits), samples, 0.001).settledForce! - middle)).toBeLessThan(1.01)
    }
  })

  it('do not exist without a touch, a move, a pull or a limit', () => {
    const samples = Array.from({ length: 4000 }, () => ({
      near: 0,
      far: 0,
      current: 1,
      speed: 0,
      travel: 0.001,
      pull: 0,
      temperature: 25,
    }))
    const bare = { 'arm.moves': [], 'part.markForce': undefined, 'part.crackForce': undefined }
    const metrics = figuresOf(scenario(bare), samples, Number.NaN)
    for (const name of [
      'contactTime',
      'damageMargin',
      'forceRipple',
      'gripTime',
      'holdMargin',
      'lostCycles',
      'maxForceInMove',
      'minForceInMove',
      'peakForce',
      'requiredForce',
      'settledForce',
      'slipDistance',
    ] as const)
      expect(metrics[name], name).toBeNull()
    expect(metrics).toMatchObject({ settledCurrent: 1, peakCurrent: 1, rmsCurrent: 1, reversals: 0, jawTravel: 0.001 })
  })

  it('are null where the numbers have left the finite range', () => {
    const infinite = Array.from({ length: 4000 }, (_, k) => ({
      near: k > 100 ? Infinity : 1,
      far: 1,
      current: k > 100 ? 1e200 : 1,
      speed: 0,
      travel: Number.NaN,
      pull: 0,
      temperature: Infinity,
    }))
    const metrics = figuresOf(scenario(), infinite, 0.001)
    for (const [name, value] of Object.entries(metrics))
      expect(value === null || Number.isFinite(value), name).toBe(true)
    expect([metrics.peakForce, metrics.settledForce, metrics.rmsCurrent, metrics.windingTemperature]).toEqual([
      null,
      null,
      null,
      null,
    ])
  })

  it.each(STRATEGIES.map(({ id }) => id))('of a real run agree with its traces at full rate (%s)', (id) => {
    // Up to 2000 samples the two rows of a bucket are its two samples.
    const real = quick({ 'jaws.opening': 0.0704, 'run.duration': 0.1, 'arm.lift': 0.08, 'part.crackForce': 500 })
    const { result, traces } = simulateGrip(real, id)
    const { metrics } = result
    expect(traces.time.length).toBe(2000)
    expect(metrics.peakForce).toBe(Math.max(highest([...traces.force]), highest([...traces.farForce])))
    expect(metrics.peakForce).toBeGreaterThan(5)
    expect(metrics.peakCurrent).toBe(highest([...traces.current].map(Math.abs)))
    const drawn = [...traces.voltage].map(
      (voltage, k) => (voltage * ((traces.current[k - 1] ?? 0) + traces.current[k]!)) / 2,
    )
    const evened = drawn.map((_, n) =>
      drawn.slice(0, n + 1).reduce((sum, power, k) => sum + power * (0.005 / 1.005) * 1.005 ** (k - n), 0),
    )
    expect(metrics.busPower! / highest(evened)).toBeCloseTo(1, 6)
    expect(metrics.rmsCurrent).toBeCloseTo(Math.sqrt(mean([...traces.current].map((i) => i * i))), 9)
    expect(metrics.windingTemperature).toBe(highest([...traces.temperature]))
    expect(metrics.damageMargin).toBeCloseTo(500 / metrics.peakForce! - 1, 12)
    const first = traces.force.findIndex((force, n) => force > 0 || traces.farForce[n]! > 0)
    expect(Math.abs(metrics.contactTime! - traces.time[first]!)).toBeLessThan(3 * PERIOD)
    const window = [...traces.current].filter((_, n) => traces.time[n]! >= 0.03 - 1e-9 && traces.time[n]! < 0.08 - 1e-9)
    expect(metrics.settledCurrent).toBeCloseTo(mean(window), 2)
  })
})
