import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { impactForce, springsAt } from '../../sim/job/grip/statics.ts'
import { sideOf } from '../blocks.ts'
import { coastOnto, scenarioOf } from './support.ts'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A part of `stiffness` K [N/m^n] between pads; 1e9 N/m is as good as rigid. */
const gripped = (exponent: number, stiffness: number, padStiffness: number, layout = 'mirrored') =>
  scenarioOf({ part: { exponent, stiffness, damping: 0, mass: 0.001 }, jaws: { padStiffness, layout, opening: 0.15 } })

describe('force of an impact without loss', () => {
  it('between rigid pads is that of Hertz’s theory, (5/4)^0.6·m^0.6·K^0.4·v^1.2 (closed form: Johnson, Contact Mechanics, 1985, §11.4)', () => {
    for (const [mass, K, speed] of [
      [0.2, 3e6, 0.05],
      [4, 1e8, 0.2],
      [30, 2e5, 0.01],
    ] as const) {
      const hertz = 1.25 ** 0.6 * mass ** 0.6 * K ** 0.4 * speed ** 1.2
      expect(impactForce(gripped(1.5, K, 1e9), mass, speed) / hertz).toBeCloseTo(1, 2)
      // A pad gives way too: stiffer ones come nearer.
      expect(impactForce(gripped(1.5, K, 1e9), mass, speed)).toBeLessThan(hertz)
    }
  })

  it('on a linear part is v·√(k·m) shared by the contacts (closed form)', () => {
    fc.assert(
      fc.property(within(1e3, 1e7), within(1e3, 1e7), within(0.05, 50), within(0.001, 2), (K, pad, mass, speed) => {
        const contact = (2 * K * pad) / (2 * K + pad)
        expect(impactForce(gripped(1, K, pad), mass, speed) / (speed * Math.sqrt((contact * mass) / 2))).toBeCloseTo(
          1,
          9,
        )
      }),
    )
  })

  it.each([1, 1.5])(
    'exponent %f: at the peak pads and part hold the energy of the mass (work of the simulated contact, step by step)',
    (exponent) => {
      fc.assert(
        fc.property(within(4, 6), within(4, 6), within(0.1, 20), within(0.01, 1), (logK, logPad, mass, speed) => {
          const [K, padStiffness] = [10 ** (exponent === 1 ? logK : logK + 1.5), 10 ** logPad]
          const force = impactForce(gripped(exponent, K, padStiffness), mass, speed)
          const quiet = { damping: 0, relaxationFraction: 0, relaxationTime: 1, yieldForce: Number.POSITIVE_INFINITY }
          const side = sideOf({ exponent, stiffness: K, padStiffness, ...quiet, step: 1e-5 })
          const { squeeze } = springsAt(gripped(exponent, K, padStiffness), force)
          const count = 4000
          let work = 0
          for (let n = 0; n < count; n++) work += side.step((squeeze * (n + 0.5)) / count, 0) * (squeeze / count)
          expect((2 * work) / (0.5 * mass * speed * speed)).toBeCloseTo(1, 4)
        }),
        { numRuns: 20 },
      )
    },
  )

  it('is the peak of jaws that coast onto a rounded part (the whole simulation)', () => {
    for (const padStiffness of [5e4, 1e9]) {
      const hit = coastOnto(0.8, 0.1, { part: { exponent: 1.5, stiffness: 4e6 }, jaws: { padStiffness } })
      const told = impactForce(gripped(1.5, 4e6, padStiffness), 0.8, hit.contactSpeed)
      expect(hit.peak / told).toBeCloseTo(1, 2)
    }
  })

  it('nothing moves, nothing hits', () => {
    expect(impactForce(gripped(1.5, 1e6, 1e5), 2, 0)).toBe(0)
  })
})
