import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Slip, shearStiffness } from '../../../sim/job/grip/slip.ts'
import { slipOf } from '../../blocks.ts'

const G = 9.80665
const options = { mass: 0.25, padStiffness: 4e5, static: 0.5, sliding: 0.4, step: 1e-5 }
const make = (change: Partial<typeof options> = {}) => slipOf({ ...options, ...change })
/** Runs for `time` [s] under a constant pull. */
function run(slip: Slip, time: number, normal: number, down = G, side = 0): Slip {
  for (let n = 0; n < Math.round(time / 1e-5); n++) slip.move(normal, down, side)
  return slip
}
/** Sum of both contact forces at which the hanging part just slides on. */
const STATIC_LIMIT = (0.25 * G) / 0.5
const SLIDING_LIMIT = (0.25 * G) / 0.4

describe('Slip', () => {
  it('lets a held part sag on the shear stiffness of its two pads, a third each of their compressive stiffness', () => {
    expect(shearStiffness(4e5)).toBeCloseTo((2 * 4e5) / 3, 6)
    const slip = run(make(), 0.5, 10 * STATIC_LIMIT)
    expect(slip.state.sag / ((0.25 * G) / shearStiffness(4e5))).toBeCloseTo(1, 6)
    expect(slip.state.drift).toBe(0)
    expect(slip.state.distance).toBe(0)
    expect(slip.state.sliding).toBe(0)
  })

  it('slides below what friction holds, with the sliding coefficient', () => {
    const normal = 0.5 * STATIC_LIMIT
    const slip = run(make(), 0.2, normal)
    expect(slip.state.sliding).toBe(1)
    const acceleration = G - (0.4 * normal) / 0.25
    // What the pads first give way in shear is no slip.
    expect(Math.abs(slip.state.distance / (0.5 * acceleration * 0.04) - 1)).toBeLessThan(0.005)
    const before = slip.state.distance
    run(slip, 0.1, normal)
    expect((slip.state.distance - before) / (acceleration * 0.1 * 0.25)).toBeCloseTo(1, 2)
  })

  it('falls freely without any force', () => {
    const slip = run(make(), 0.1, 0)
    expect(slip.state.sag / (0.5 * G * 0.01)).toBeCloseTo(1, 3)
  })

  it('holds at rest by static friction and, once sliding, needs more: the sliding coefficient is lower', () => {
    const between = 0.5 * (STATIC_LIMIT + SLIDING_LIMIT) * 1.0
    // Let it sag slowly: a sudden load would overshoot the spring.
    const still = make()
    for (let n = 0; n < 100_000; n++) still.move(between, G * Math.min(1, n / 50_000), 0)
    expect(still.state.distance).toBe(0)
    // Barely moving: the pads' damping must not be what keeps it going.
    const slid = run(make(), 1e-3, 0.5 * STATIC_LIMIT)
    const reached = slid.state.distance
    run(slid, 0.3, between)
    expect(slid.state.distance).toBeGreaterThan(reached + 0.01)
    expect(slid.state.sliding).toBe(1)
  })

  it('takes the weight without a swing when it is hung up', () => {
    const slip = make()
    slip.hang(10 * STATIC_LIMIT, G, 2)
    const { sag, drift } = slip.state
    run(slip, 0.01, 10 * STATIC_LIMIT, G, 2)
    expect(slip.state.sag / sag).toBeCloseTo(1, 9)
    expect(slip.state.drift / drift).toBeCloseTo(1, 9)
    expect(slip.state.distance).toBe(0)
  })

  it('comes to rest when gripped harder', () => {
    const slip = run(make(), 0.05, 0.5 * STATIC_LIMIT)
    run(slip, 0.3, 20 * STATIC_LIMIT)
    expect(slip.state.sliding).toBe(0)
    const stopped = slip.state.distance
    run(slip, 0.3, 20 * STATIC_LIMIT)
    expect(slip.state.distance).toBe(stopped)
    expect(slip.state.sag).toBeGreaterThan(0)
  })

  it('never counts a distance back', () => {
    const pull = fc.double({ min: -30, max: 30, noNaN: true })
    const normal = fc.double({ min: 0, max: 30, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(normal, pull, pull), { maxLength: 20 }), (list) => {
        const slip = make()
        let before = 0
        for (const [n, down, side] of list) {
          run(slip, 2e-4, n, down, side)
          expect(slip.state.distance).toBeGreaterThanOrEqual(before)
          before = slip.state.distance
        }
      }),
    )
  })

  it('knows no preferred direction in the pad plane', () => {
    const straight = run(make(), 0.1, 0.5 * STATIC_LIMIT, G, 0)
    const slanted = run(make(), 0.1, 0.5 * STATIC_LIMIT, 0.6 * G, 0.8 * G)
    expect(slanted.state.distance / straight.state.distance).toBeCloseTo(1, 9)
    expect(slanted.state.sag / straight.state.sag).toBeCloseTo(0.6, 9)
    expect(slanted.state.drift / straight.state.sag).toBeCloseTo(0.8, 9)
    const mirrored = run(make(), 0.1, 0.5 * STATIC_LIMIT, 0.6 * G, -0.8 * G)
    expect(mirrored.state.drift).toBe(-slanted.state.drift)
    expect(mirrored.state.distance).toBe(slanted.state.distance)
  })

  it('slides less, the harder it is gripped', () => {
    const distances = [0, 0.2, 0.4, 0.6, 0.8].map((share) => run(make(), 0.1, share * STATIC_LIMIT).state.distance)
    for (let n = 1; n < distances.length; n++) expect(distances[n]!).toBeLessThan(distances[n - 1]!)
  })
})
