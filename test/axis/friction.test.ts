import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Friction } from '../../sim/axis/friction.ts'
import { copyState } from '../../sim/run/mirror.ts'
import { frictionOf } from '../blocks.ts'

const options = { coulomb: 6, breakaway: 9, stribeckSpeed: 2e-3, viscous: 20, bristleStiffness: 2e6 }
const STEP = 1e-5
const make = (change: Partial<typeof options> = {}, raise = 0, lower = 0) =>
  frictionOf({ ...options, ...change }, 1, raise, lower, STEP)

/** Force [N] once the bristles have settled at a speed [m/s]. */
function sliding(friction: Friction, speed: number, load = 0): number {
  let force = 0
  const settling = 5e-4 / (Math.abs(speed) * STEP) // steps over some forty bristle lengths
  for (let n = 0; n < settling + 100; n++) force = friction.force(speed, load)
  return force
}

describe('Friction', () => {
  it('slides with Coulomb, the Stribeck rise and viscous friction', () => {
    for (const v of [1e-4, 2e-3, 0.01, 0.1, 1])
      expect(sliding(make(), v)).toBeCloseTo(6 + 3 / (1 + (v / 2e-3) ** 2) + 20 * v, 9)
  })

  it('has lost half of the rise at the Stribeck speed', () => {
    expect(sliding(make({ viscous: 0 }), 2e-3)).toBeCloseTo(7.5, 9)
  })

  it('falls from break-away to Coulomb as it speeds up, and grows from there with viscous friction alone', () => {
    const speeds = [1e-4, 4e-4, 2e-3, 1e-2, 1e-1]
    const dry = speeds.map((v) => sliding(make({ viscous: 0 }), v))
    for (let n = 1; n < dry.length; n++) expect(dry[n]!).toBeLessThan(dry[n - 1]!)
    expect(dry[0]).toBeCloseTo(6 + 3 / (1 + 0.05 ** 2), 9) // a twentieth of the Stribeck speed
    expect(dry.at(-1)).toBeCloseTo(6, 2)
  })

  it('is a spring of the bristle stiffness before it breaks away', () => {
    const friction = make({ viscous: 0 })
    for (let n = 0; n < 1000; n++) friction.force(1e-6, 0) // 10 nm
    for (let n = 0; n < 10; n++) friction.force(0, 0)
    expect(friction.force(0, 0) / (2e6 * 1e-8)).toBeCloseTo(1, 2)
  })

  it('damps the bristles with half the critical damping of the mass that they hold', () => {
    const own = 2e6 * 1e-6 * STEP // σ0·v·dt
    expect(make({ viscous: 0 }).force(1e-6, 0) / (own + Math.sqrt(2e6 * 1) * 1e-6)).toBeCloseTo(1, 4)
  })

  it('never stretches a bristle beyond the highest friction', () => {
    const speed = fc.double({ min: -10, max: 10, noNaN: true })
    fc.assert(
      fc.property(fc.array(speed, { maxLength: 100 }), (speeds) => {
        const friction = make()
        for (const v of speeds) {
          friction.force(v, 0)
          expect(Math.abs(friction.state.bristle)).toBeLessThanOrEqual((9 / 2e6) * (1 + 1e-12))
        }
      }),
    )
  })

  it('grows with the load: one share moving against it, another moving with it', () => {
    const friction = () => make({ viscous: 0 }, 0.2, 0.15)
    expect(sliding(friction(), 0.1, 100) - sliding(friction(), 0.1, 0)).toBeCloseTo(20, 9)
    expect(sliding(friction(), -0.1, 100) - sliding(friction(), -0.1, 0)).toBeCloseTo(-15, 9)
    expect(sliding(friction(), -0.1, -100) - sliding(friction(), -0.1, 0)).toBeCloseTo(-20, 9)
    expect(sliding(friction(), 0.1, -100) - sliding(friction(), 0.1, 0)).toBeCloseTo(15, 9)
  })

  it('takes energy out of every closed path', () => {
    const friction = make({}, 0.1, 0.1)
    let [x, work] = [0, 0]
    for (let n = 0; n < 200_000; n++) {
      const v = 0.01 * Math.sin((2 * Math.PI * n) / 20_000)
      x += v * STEP
      work += friction.force(v, 30) * v * STEP
      if (n % 20_000 === 19_999 && n > 20_000) expect(work).toBeGreaterThan(0)
    }
    expect(Math.abs(x)).toBeLessThan(1e-6)
    // Ten cycles over twice 2·v/ω of path, at least Coulomb all along.
    expect(work).toBeGreaterThan(10 * 4 * ((0.01 * 0.2) / (2 * Math.PI)) * 6)
  })

  it('is nothing on an axis without friction', () => {
    const bare = make({ coulomb: 0, breakaway: 0, viscous: 0 })
    for (const v of [0, 1e-9, -0.1, 3]) expect(bare.force(v, 0)).toBeCloseTo(0, 12)
  })

  it('answers mirrored motion and load with mirrored force, bit for bit', () => {
    const speed = fc.double({ min: -1, max: 1, noNaN: true })
    const load = fc.double({ min: -500, max: 500, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(speed, load), { maxLength: 50 }), (list) => {
        const [one, other] = [make({}, 0.2, 0.1), make({}, 0.2, 0.1)]
        for (const [v, f] of list) expect(one.force(v, f) + other.force(-v, -f)).toBe(0)
      }),
    )
  })

  it('keeps its force in stiffer bristles, and no more of it than the new friction bears', () => {
    const one = make()
    for (let n = 0; n < 100; n++) one.force(1e-3, 0) // a micrometre, before it breaks away
    const at = (friction: Friction, change: Partial<typeof options>) => {
      const next = make(change)
      copyState(friction, next)
      next.settle()
      return next.force(0, 0)
    }
    const force = at(one, {})
    expect(force).toBeGreaterThan(1)
    expect(force).toBeLessThan(5)
    expect(at(one, { bristleStiffness: 8e6 })).toBeCloseTo(force, 9)
    expect(at(one, { coulomb: 0.5, breakaway: 1 })).toBeCloseTo(1, 6)
    expect(at(one, { coulomb: 0, breakaway: 0 })).toBeCloseTo(0, 9)
  })
})
