import { describe, expect, it } from 'vitest'
import { bareJaws, coastOnto, held, runOpenLoop, scenarioOf } from './support.ts'

/**
 * One contact is a pad in series with half of the part: k = 2K·kp/(2K + kp); two of them carry mirrored jaws. Whole-part
 * stiffness K for a contact of stiffness k.
 */
const partStiffness = (k: number, pad: number) => (k * pad) / (2 * (pad - k))

describe('jaws coast onto a linear part: peak v √(k m), contact time π √(m/k) (closed form)', () => {
  it.each([
    [0.2, 1e9],
    [0.2, 1e5],
    [1.2, 1e5],
  ])('jaws of %f kg on pads of %f N/m against 50 N/mm in all', (mass, pad) => {
    const k = 5e4
    const hit = coastOnto(mass, 0.1, {
      part: { stiffness: partStiffness(k / 2, pad) },
      jaws: { padStiffness: pad },
    })
    const { travel, time } = hit.run.traces
    expect((travel[500]! - travel[400]!) / (time[500]! - time[400]!)).toBeCloseTo(hit.contactSpeed, 6)
    const total = hit.contactSpeed * Math.sqrt(k * mass)
    expect(hit.peak / (total / 2)).toBeCloseTo(1, 3)
    expect(hit.contactTime / (Math.PI * Math.sqrt(mass / k))).toBeCloseTo(1, 3)
    expect(hit.exitSpeed / hit.contactSpeed).toBeCloseTo(1, 3)
  })

  it('against an anvil the one jaw, the part and the fixed jaw: exact solution of the two masses on half a part each', () => {
    const K = 5e4
    const jaw = 0.2
    const part = 0.02
    const hit = coastOnto(jaw, 0.1, {
      part: { stiffness: K, mass: part },
      jaws: { layout: 'anvil', mass: jaw, opening: 0.072 },
    })
    const k = (2 * K * 1e9) / (2 * K + 1e9)
    const step = 1e-5
    const exact = held(
      [
        [0, 1, 0, 0],
        [-k / jaw, 0, k / jaw, 0],
        [0, 0, 0, 1],
        [k / part, 0, (-2 * k) / part, 0],
      ],
      [0, 0, 0, 0],
      step,
    )
    let state = [0, hit.contactSpeed, 0, 0]
    let peak = 0
    for (let n = 0; n < 1000; n++) {
      state = exact.next(state, 0)
      peak = Math.max(peak, k * (state[0]! - state[2]!), k * state[2]!)
      if (state[0]! - state[2]! < 0 || state[2]! < 0) break // a contact opens after the peak
    }
    expect(hit.peak / peak).toBeCloseTo(1, 3)
  })
})

describe('driven onto a linear part by a constant force F0: peak F0 + √(F0² + k m v²) (closed form; the impact factor of strength texts)', () => {
  const press = (mass: number, gap: number, k: number) =>
    runOpenLoop(
      scenarioOf(bareJaws(mass), {
        part: { stiffness: partStiffness(k / 2, 1e9), width: 0.07 },
        jaws: { opening: 0.07 + 2 * gap },
        run: { duration: 0.1 },
      }),
      () => 20,
    ).metrics

  it.each([0.0005, 0.002])('20 N over a gap of %f m', (gap) => {
    const { peakForce, contactSpeed } = press(0.2, gap, 5e4)
    expect((2 * peakForce!) / (20 + Math.sqrt(400 + 5e4 * 0.2 * contactSpeed! ** 2))).toBeCloseTo(1, 3)
  })

  it('from rest at the surface: twice the force', () => {
    const { peakForce } = press(4, 1e-7, 5e4)
    expect(2 * peakForce!).toBeGreaterThan(2 * 20 * 0.998)
    expect(2 * peakForce!).toBeLessThan(2 * 20 * 1.002)
  })
})
