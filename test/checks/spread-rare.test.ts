/** Rare shares against closed forms and published limit states. */
import { describe, expect, it } from 'vitest'
import { normalShare } from '../../sim/ask/spread/distributions.ts'
import { rareShare } from '../../sim/ask/spread/rare.ts'

type State = (z: Float64Array) => number
const linear = (beta: number) => (z: Float64Array) => beta - z.reduce((sum, one) => sum + one, 0) / Math.sqrt(z.length)

async function found(state: State, dimension: number, size: number, seed = 1) {
  const answer = await rareShare(async (points) => points.map(state), { dimension, seed, size })
  if (answer.kind !== 'share') throw new Error(answer.kind)
  return answer
}

describe('linear limit state, Φ(−β) (closed form)', () => {
  it.each([
    [3.5, 2.326291e-4, 3],
    [4.5, 3.397673e-6, 5],
  ])('β = %d: %d within two fifths, by %i levels', async (beta, truth, levels) => {
    expect(normalShare(-beta) / truth).toBeCloseTo(1, 6)
    for (const seed of [1, 2, 3]) {
      const answer = await found(linear(beta), 6, 1000, seed)
      expect(Math.abs(answer.share / truth - 1)).toBeLessThan(0.4)
      // Thresholds at β − 1.281552, − 2.326348, − 3.090232 … (Φ of a tenth, a hundredth, …); a level of 1,000 knows them to 0.1 or so.
      expect(answer.levels).toHaveLength(levels)
      for (const [k, at] of [1.281552, 2.326348, 3.090232].entries()) {
        expect(Math.abs(answer.levels[k]! - (beta - at))).toBeLessThan(0.3)
      }
    }
  })
})

describe('published limit states', () => {
  const parabola = (x: number, y: number, offset: number, hand: number) =>
    offset + 0.1 * (x - y) ** 2 - (hand * (x + y)) / Math.SQRT2

  it('series system of four branches: 2.222795e-3 (quadrature; Echard 2011 samples 2.233e-3)', async () => {
    const state: State = ([x, y]) =>
      Math.min(parabola(x!, y!, 3, 1), parabola(x!, y!, 3, -1), x! - y! + 7 / Math.SQRT2, y! - x! + 7 / Math.SQRT2)
    for (const seed of [1, 2, 3, 4]) {
      const { share, variation } = await found(state, 2, 1000, seed)
      expect(Math.abs(share / 2.222795e-3 - 1)).toBeLessThan(3 * variation)
    }
  })

  it('one parabola: 4.207306e-3, where the first order has Φ(−2.5) = 6.21e-3 (Waarts 2000)', async () => {
    for (const seed of [1, 2, 3, 4]) {
      const { share, variation } = await found(([x, y]) => parabola(x!, y!, 2.5, 1), 2, 1000, seed)
      expect(Math.abs(share / 4.207306e-3 - 1)).toBeLessThan(3 * variation)
      expect(share).toBeLessThan(5.5e-3)
    }
  })

  it('a bar of 25 mm, yield N(250, 25) MPa, force N(70, 7) kN: 9.51684e-5 (stress–strength, closed form; Verma et al. 2016)', async () => {
    const area = (Math.PI / 4) * 25 ** 2
    const state: State = ([strength, force]) => 250 + 25 * strength! - ((70 + 7 * force!) * 1000) / area
    const beta = (250 - 70_000 / area) / Math.sqrt(25 ** 2 + (7000 / area) ** 2)
    expect(beta).toBeCloseTo(3.731508, 5)
    for (const seed of [1, 2, 3, 4]) {
      const { share, variation, likeliest } = await found(state, 2, 500, seed)
      expect(Math.abs(share / 9.51684e-5 - 1)).toBeLessThan(3 * variation)
      // The likeliest failure lies β from the middle (Hasofer and Lind 1974): weak steel and a large force.
      expect(Math.sqrt(likeliest[0]! ** 2 + likeliest[1]! ** 2)).toBeLessThan(beta + 0.05)
      expect(likeliest[0]).toBeLessThan(0)
      expect(likeliest[1]).toBeGreaterThan(0)
    }
  })
})
