import { describe, expect, it } from 'vitest'
import { Side } from '../../sim/job/grip/contact/side.ts'
import { Plant } from '../../sim/plant/plant.ts'
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
const plantOf = (s = scenario) => new Plant(s, PERIOD, 10)

/** Closes with a voltage, lifts once the part is gripped, and goes on. */
function drive(plant: Plant, from: number, to: number): void {
  for (let k = from; k < to; k++) {
    const time = k * PERIOD
    plant.arm.at(time)
    if (!plant.hanging && !plant.out && plant.nearForce > 5) plant.lift()
    plant.advance(time, 3, true, 0)
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
      next.take(alone)
      next.arm.at((k + 249) * PERIOD)
      expect(next).toEqual(alone)
    }
    expect(alone.contactTime).toBeGreaterThan(0)
    expect(alone.slip.distance).toBeGreaterThan(0)
    expect(alone.near.dent > 0).toBe(fate === 'dented')
    expect(Number.isNaN(alone.crackTime)).toBe(fate === 'dented')
  })

  it('hands its axis over without its part', () => {
    const one = plantOf()
    drive(one, 0, 6000)
    const next = plantOf()
    next.takeAxis(one)
    expect([next.x, next.v, next.jawX, next.jawV]).toEqual([one.x, one.v, one.jawX, one.jawV])
    expect(next.heat).toEqual(one.heat)
    expect(next.winding.current).toBe(one.winding.current)
    expect(next).toMatchObject({ hanging: false, out: false, partX: 0, nearForce: 0, peak: 0 })
    expect(next.near).toEqual(plantOf().near)
  })

  it('keeps a dent in a part that no longer yields', () => {
    const options = { exponent: 1, stiffness: 1e5, padStiffness: 4e5, damping: 0, relaxationFraction: 0 }
    const side = (yieldForce: number) => new Side({ ...options, relaxationTime: 1, yieldForce, step: 1e-5 })
    const dented = side(10)
    dented.step(2e-4, 0)
    expect(dented.dent).toBeGreaterThan(1e-5)
    const tough = side(Number.POSITIVE_INFINITY)
    tough.take(dented)
    expect(tough.step(0.4 * dented.dent, 0)).toBe(0)
    expect(tough.step(2e-4, 0)).toBeCloseTo(10, 6)
  })
})
