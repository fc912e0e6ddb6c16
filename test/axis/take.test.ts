import { describe, expect, it } from 'vitest'
import type { Bench } from '../../sim/cycle/bench.ts'
import { strategyOf } from '../../sim/index.ts'
import type { GripLoad } from '../../sim/job/grip/load.ts'
import { modelOf } from '../../sim/model/model.ts'
import { copyState } from '../../sim/run/mirror.ts'
import { sideOf } from '../blocks.ts'
import { make } from '../scenario/make.ts'

const PERIOD = 1 / 20000
const scenario = make(
  {},
  {
    'part.relaxation': { fraction: 0.3, time: 0.1 },
    'part.yieldForce': 12,
    'part.crackForce': undefined,
    'jaws.friction': { static: 0.05, sliding: 0.04, loadExponent: 0.8, referenceForce: 20 },
  },
)
const brittle = make(scenario, { 'part.yieldForce': undefined, 'part.crackForce': 12 })

/** Axis and grip of a bench, without the drive. */
function plantOf(s = scenario): { bench: Bench; load: GripLoad } {
  const { bench } = modelOf(s, strategyOf('current-clamp'))
  const load = bench.load as GripLoad
  load.liftTime = Number.POSITIVE_INFINITY
  bench.settle()
  return { bench, load }
}

/** Closes with a voltage, lifts once the part is gripped, and goes on. */
function drive({ bench, load }: ReturnType<typeof plantOf>, from: number, to: number): void {
  for (let k = from; k < to; k++) {
    const time = k * PERIOD
    bench.arm.at(time)
    const { hanging, out, nearForce } = load.state
    if (hanging === 0 && out === 0 && nearForce > 5) load.lift(time, bench.arm)
    load.begin(time, bench.arm, false)
    bench.axis.advance(load, time, 3, true, load.pull(bench.arm), 0)
    load.end(time, false)
  }
}

describe('A plant that goes on from where another one stands', () => {
  it.each([
    ['dented', scenario],
    ['broken', brittle],
  ])('has all of its state, in free air, at touch, and %s', (fate, s) => {
    const alone = plantOf(s)
    for (let k = 0; k < 6000; k += 250) {
      drive(alone, k, k + 250)
      const next = plantOf(s)
      copyState(alone.bench, next.bench)
      next.bench.settle()
      expect(next.bench.axis).toEqual(alone.bench.axis)
      expect(next.load).toEqual(alone.load)
    }
    const { state, slip, near } = alone.load
    expect(state.contactTime).toBeGreaterThan(0)
    expect(slip.state.distance).toBeGreaterThan(0)
    expect(near.state.dent > 0).toBe(fate === 'dented')
    expect(Number.isNaN(state.crackTime)).toBe(fate === 'dented')
  })

  it('hands its axis over without its part', () => {
    const one = plantOf()
    drive(one, 0, 6000)
    const next = plantOf()
    copyState(one.bench.axis, next.bench.axis)
    next.bench.settle()
    expect(next.bench.axis).toEqual(one.bench.axis)
    expect(next.load.state).toMatchObject({ hanging: 0, out: 0, shift: 0, nearForce: 0, peak: 0 })
    expect(next.load.near).toEqual(plantOf().load.near)
  })

  it('keeps a dent in a part that no longer yields', () => {
    const options = { exponent: 1, stiffness: 1e5, padStiffness: 4e5, damping: 0, relaxationFraction: 0 }
    const side = (yieldForce: number) => sideOf({ ...options, relaxationTime: 1, yieldForce, step: 1e-5 })
    const dented = side(10)
    dented.step(2e-4, 0)
    expect(dented.state.dent).toBeGreaterThan(1e-5)
    const tough = side(Number.POSITIVE_INFINITY)
    copyState(dented, tough)
    tough.settle(false)
    expect(tough.step(0.4 * dented.state.dent, 0)).toBe(0)
    expect(tough.step(2e-4, 0)).toBeCloseTo(10, 6)
  })
})
