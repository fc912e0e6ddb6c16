/** Laws of whole grips: what must hold of any part in any pads, whatever the figures. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Slip } from '../../../sim/job/grip/slip.ts'
import { slipOf } from '../../blocks.ts'

const options = { mass: 0.5, padStiffness: 2e5, static: 0.3, sliding: 0.25, step: 1e-5 }

/** A pull [m/s²] in the pad plane over time. */
type Pull = (time: number) => { down: number; side: number }

function hang(pull: Pull, time: number, normal: number, change: Partial<Parameters<typeof slipOf>[0]> = {}): Slip {
  const slip = slipOf({ ...options, ...change })
  const { step } = slip
  const first = pull(0)
  slip.hang(normal, first.down, first.side)
  for (let n = 0; n < Math.round(time / step); n++) {
    const { down, side } = pull(n * step)
    slip.move(normal, down, side)
  }
  return slip
}

const turned = (pull: Pull, angle: number): Pull => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return (time) => {
    const { down, side } = pull(time)
    return { down: cos * down - sin * side, side: sin * down + cos * side }
  }
}

/** Weight, and shaking across it harder than friction. */
const SHAKEN: Pull = (time) => ({ down: 9.80665, side: 60 * Math.sin(2 * Math.PI * 25 * time) })

describe('sliding in the pad plane', () => {
  it('turning the pull turns the way, and changes nothing else', () => {
    const reference = hang(SHAKEN, 0.3, 60)
    expect(reference.state.distance).toBeGreaterThan(1e-3)
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (angle) => {
        const { distance, sag, drift } = hang(turned(SHAKEN, angle), 0.3, 60).state
        expect(distance / reference.state.distance).toBeCloseTo(1, 7)
        expect(Math.hypot(sag, drift) / Math.hypot(reference.state.sag, reference.state.drift)).toBeCloseTo(1, 7)
      }),
      { numRuns: 20 },
    )
  })

  it('half the step changes the way by less than 1 %, and so it goes on', () => {
    const [coarse, half, fine] = [1e-5, 5e-6, 1e-6].map((step) => hang(SHAKEN, 0.3, 60, { step }).state)
    expect(Math.abs(coarse!.distance / half!.distance - 1)).toBeLessThan(0.01)
    expect(Math.abs(coarse!.distance / fine!.distance - 1)).toBeLessThan(0.01)
    expect(Math.abs(coarse!.sag / fine!.sag - 1)).toBeLessThan(0.01)
  })

  it('a part pulled steadily sideways beyond friction sinks with the ratio of the pulls (closed form)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 200, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (side, down) => {
          const { state } = hang(() => ({ down, side }), 0.05, 40)
          expect(state.sag / state.drift / (down / side)).toBeCloseTo(1, 9)
          // Friction carries its share against the way: the part goes as under what is left of the pull.
          const left = Math.hypot(down, side) - (0.25 * 40) / 0.5
          expect(Math.hypot(state.sag, state.drift) / ((left * 0.05 ** 2) / 2)).toBeCloseTo(1, 1)
        },
      ),
      { numRuns: 20 },
    )
  })

  it('shaken fast across, a heavy part creeps as if friction were viscous: F/(µN) = (2/π)·s·K(√(1 − s²)), s = u/√(u² + V²)', () => {
    // Imachi 1968 calls it frictional viscosity; closed form for a part too heavy to be moved by the shaking.
    const [mass, speed, omega] = [50, 0.2, 2 * Math.PI * 40]
    const normal = 400
    const share = 0.3
    // The shaking is told as a pull; what it does to the part is the speed amplitude, and friction must not slow it.
    const slip = slipOf({ ...options, mass, padStiffness: 5e7, static: 0.25, sliding: 0.25, step: 2e-6 })
    slip.state.driftSpeed = -speed
    slip.state.sliding = 1
    const down = (share * 0.25 * normal) / mass
    const places: number[] = []
    const period = (2 * Math.PI) / omega
    for (let n = 0; n * 2e-6 < 60 * period; n++) {
      slip.move(normal, down, speed * omega * Math.sin(omega * n * 2e-6))
      if (n * 2e-6 >= (places.length + 20) * period) places.push(slip.state.sag)
    }
    const u = (places.at(-1)! - places[0]!) / ((places.length - 1) * period)
    const s = u / Math.hypot(u, speed)
    const agm = (a: number, b: number): number => (Math.abs(a - b) < 1e-14 ? a : agm((a + b) / 2, Math.sqrt(a * b)))
    const k = Math.PI / 2 / agm(1, s) // K(k') with k' = √(1 − s²)
    expect(((2 / Math.PI) * s * k) / share).toBeCloseTo(1, 1)
  })
})

describe('turning in the pads', () => {
  const off = { below: 0.004, beside: 0.012, radius: 0.01, gyration: 0.03 }

  it('stays where the limit surface holds it, and turns where it does not (closed form)', () => {
    const torque = 0.012 / 0.01
    const needed = (0.5 * 9.80665 * Math.hypot(1, torque)) / 0.3
    const weight: Pull = () => ({ down: 9.80665, side: 0 })
    expect(hang(weight, 0.3, 1.01 * needed, off).hasSlid()).toBe(false)
    const turns = hang(weight, 0.3, 0.99 * needed, off)
    expect(turns.hasSlid()).toBe(true)
    // Heavier on one side it turns that side down.
    expect(turns.state.turn).toBeLessThan(-0.1)
  })

  it('ends up hanging with its centre of mass below the pads where friction is weak', () => {
    const pendulum = hang(() => ({ down: 9.80665, side: 0 }), 6, 20, {
      ...off,
      static: 0.5,
      sliding: 0.5,
      radius: 0.002,
    })
    const angle = Math.atan2(0.012, 0.004)
    expect(pendulum.state.turn).toBeLessThan(-0.5 * angle)
    expect(pendulum.state.distance).toBeLessThan(0.02)
  })

  it('turning pull and centre of mass together changes nothing', () => {
    const reference = hang(SHAKEN, 0.2, 60, off)
    expect(Math.abs(reference.state.turn)).toBeGreaterThan(0.1)
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (angle) => {
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
        const below = cos * off.below - sin * off.beside
        const beside = sin * off.below + cos * off.beside
        const { state } = hang(turned(SHAKEN, angle), 0.2, 60, { ...off, below, beside })
        expect(state.turn / reference.state.turn).toBeCloseTo(1, 5)
        expect(state.distance / reference.state.distance).toBeCloseTo(1, 5)
      }),
      { numRuns: 20 },
    )
  })

  it('a part held at its centre does not turn, and none that turns gains energy from the pads', () => {
    expect(hang(SHAKEN, 0.2, 60).state.turn).toBe(0)
    fc.assert(
      fc.property(
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        (below, beside, normal) => {
          const { state } = hang(() => ({ down: 9.80665, side: 0 }), 0.2, normal, { ...off, below, beside })
          const swing = Math.abs(state.turnSpeed) * Math.hypot(below, beside)
          const speed = Math.hypot(state.sagSpeed, state.driftSpeed)
          // What it fell through at most, as the pads' centre and as its own centre of mass about it.
          const fell = Math.max(0, state.sag) + 2 * Math.hypot(below, beside)
          expect((speed - swing) ** 2 / 2).toBeLessThanOrEqual(9.80665 * fell * 1.01 + 1e-9)
        },
      ),
      { numRuns: 40 },
    )
  })
})
