import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Side } from '../../../../sim/job/grip/contact/side.ts'
import { type SideOptions, sideOf } from '../../../blocks.ts'

const K = 1.5e5
const PAD = 4e5
const options: SideOptions = {
  exponent: 1,
  stiffness: K,
  padStiffness: PAD,
  damping: 0,
  relaxationFraction: 0,
  relaxationTime: 1,
  yieldForce: Infinity,
  step: 1e-4,
}
const make = (change: Partial<SideOptions> = {}) => sideOf({ ...options, ...change })
/** Force [N] after so many steps at a squeeze of 1 mm. */
function hold(side: Side, steps: number): number {
  let force = 0
  for (let n = 0; n < steps; n++) force = side.step(1e-3, 0)
  return force
}
/** Half the part is twice as stiff as the whole; the pad stands in series. */
const SERIES = 1 / (1 / (2 * K) + 1 / PAD)

describe('Side, elastic', () => {
  it('is half the part in series with its pad', () => {
    for (const s of [1e-6, 1e-4, 2e-3]) expect(make().step(s, 0) / (SERIES * s)).toBeCloseTo(1, 12)
  })

  it('with exponent 1.5 gives the squeeze that Hertz and pad add up to', () => {
    const side = make({ exponent: 1.5, stiffness: 2e8 })
    for (const s of [1e-6, 1e-4, 2e-3]) {
      const force = side.step(s, 0)
      expect((0.5 * (force / 2e8) ** (2 / 3) + force / PAD) / s).toBeCloseTo(1, 9)
    }
  })

  it('does not pull: no force off the part, however fast it leaves', () => {
    const any = fc.double({ min: -0.01, max: 0.01, noNaN: true })
    const rate = fc.double({ min: -100, max: 100, noNaN: true })
    const list = fc.array(fc.tuple(any, rate), { maxLength: 60 })
    fc.assert(
      fc.property(list, fc.constantFrom(1, 1.5), fc.constantFrom(0, 0.7), (moves, exponent, relaxationFraction) => {
        const side = make({ exponent, relaxationFraction, damping: 2, yieldForce: 80 })
        for (const [s, v] of moves) {
          const force = side.step(s, v)
          expect(force).toBeGreaterThanOrEqual(0)
          expect(force).toBeLessThan(Infinity)
          if (s <= 0) expect(force).toBe(0)
        }
      }),
    )
  })

  it('grows with the squeeze', () => {
    const squeeze = fc.double({ min: 0, max: 0.01, noNaN: true })
    fc.assert(
      fc.property(squeeze, squeeze, fc.constantFrom(1, 1.5), (a, b, exponent) => {
        const force = (s: number) => make({ exponent }).step(s, 0)
        expect(force(Math.max(a, b))).toBeGreaterThanOrEqual(force(Math.min(a, b)))
      }),
    )
  })

  it('damps after Hunt and Crossley: F = Fe·(1 + λ·2ṡ) of the part, the pad taking its share of the rate', () => {
    const rigid = make({ padStiffness: 1e15, damping: 0.4 })
    expect(rigid.step(1e-3, 0.05)).toBeCloseTo(2 * K * 1e-3 * (1 + 0.4 * 2 * 0.05), 4)
    expect(rigid.step(1e-3, -0.05)).toBeCloseTo(2 * K * 1e-3 * (1 - 0.4 * 2 * 0.05), 4)
    const share = PAD / (PAD + 2 * K)
    expect(make({ damping: 0.4 }).step(1e-3, 0.05)).toBeCloseTo(SERIES * 1e-3 * (1 + 0.8 * share * 0.05), 8)
  })
})

describe('Side, relaxing', () => {
  const relaxing = (exponent: number) =>
    make({
      exponent,
      stiffness: exponent === 1 ? K : 2e7,
      padStiffness: 1e15,
      relaxationFraction: 0.4,
      relaxationTime: 0.05,
    })

  it.each([1, 1.5])('held at a width loses its share with its time constant (exponent %d)', (exponent) => {
    const side = relaxing(exponent)
    const start = side.step(1e-3, 0)
    const rigid = exponent === 1 ? 2 * K * 1e-3 : 2e7 * 2e-3 ** 1.5
    expect(start / rigid).toBeCloseTo(1, 2)
    expect(hold(side, 500) / rigid).toBeCloseTo(0.6 + 0.4 * Math.exp(-1), 3)
    expect(hold(side, 20_000) / rigid).toBeCloseTo(0.6, 6)
  })

  it('held between pads relaxes to the softened part in series with them', () => {
    const side = make({ relaxationFraction: 0.4, relaxationTime: 0.05 })
    expect(hold(side, 50_000) / (1e-3 / (1 / (0.6 * 2 * K) + 1 / PAD))).toBeCloseTo(1, 6)
  })

  it('comes back to itself when left alone', () => {
    const side = relaxing(1)
    for (let n = 0; n < 5000; n++) side.step(1e-3, 0)
    expect(side.step(1e-4, 0)).toBe(0) // it has shortened and has not come back yet
    for (let n = 0; n < 50_000; n++) side.step(-1, 0)
    expect(side.step(1e-3, 0) / (2 * K * 1e-3)).toBeCloseTo(1, 2)
  })
})

describe('Side, yielding', () => {
  it.each([1, 1.5])('carries at most the yield force; beyond it a dent grows (exponent %d)', (exponent) => {
    const stiffness = exponent === 1 ? K : 2e7
    const side = make({ exponent, stiffness, yieldForce: 50 })
    const atYield = 0.5 * (50 / stiffness) ** (1 / exponent) + 50 / PAD
    expect(side.step(0.999 * atYield, 0)).toBeLessThan(50)
    expect(side.state.dent).toBe(0)
    for (const s of [1.1, 2, 3]) {
      expect(side.step(s * atYield, 0)).toBeCloseTo(50, 9)
      expect(side.state.dent / (2 * (s - 1) * atYield)).toBeCloseTo(1, 6)
    }
  })

  it('keeps the dent: unloaded and loaded again it touches later, and gives again where it stopped', () => {
    const side = make({ yieldForce: 50 })
    side.step(1e-3, 0)
    const dent = side.state.dent
    expect(dent).toBeGreaterThan(0)
    expect(side.step(0.5 * dent, 0)).toBe(0)
    expect(side.step(0.5 * dent + 1e-5, 0)).toBeCloseTo(SERIES * 1e-5, 6)
    expect(side.step(1e-3, 0)).toBeCloseTo(50, 9)
    expect(side.state.dent).toBeCloseTo(dent, 15)
  })
})

describe('Side, broken', () => {
  it.each([1, 1.5])('keeps a fiftieth of its stiffness and no yield force (exponent %d)', (exponent) => {
    const stiffness = exponent === 1 ? K : 2e7
    const broken = make({ exponent, stiffness, yieldForce: 50 })
    broken.step(1e-4, 0)
    broken.crack()
    const soft = make({ exponent, stiffness: 0.02 * stiffness })
    for (const s of [1e-4, 1e-3, 0.02]) expect(broken.step(s, 0)).toBeCloseTo(soft.step(s, 0), 9)
    expect(broken.step(0.02, 0)).toBeGreaterThan(50)
    expect(broken.state.dent).toBe(0)
  })

  it('forgets what had relaxed: the broken part starts anew', () => {
    const relaxing = { relaxationFraction: 0.4, relaxationTime: 0.05 }
    const broken = make(relaxing)
    for (let n = 0; n < 300; n++) broken.step(1e-3, 0)
    broken.crack()
    const soft = make({ ...relaxing, stiffness: 0.02 * K })
    const fresh = soft.step(1e-3, 0)
    const faded = hold(soft, 50_000)
    for (let n = 0; n < 5; n++) {
      const force = broken.step(1e-3, 0)
      expect(force).toBeLessThanOrEqual(fresh)
      expect(force).toBeGreaterThanOrEqual(faded)
    }
  })
})
