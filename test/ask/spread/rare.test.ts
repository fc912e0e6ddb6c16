/** What subset simulation and the points about its failures say, against limit states of known share; seeds are fixed. */
import { describe, expect, it } from 'vitest'
import { centresOf } from '../../../sim/ask/spread/importance.ts'
import { LEAST, type LimitState, type Rare, rareShare, type Wish } from '../../../sim/ask/spread/rare.ts'
import { normals, variationOf } from '../../../sim/ask/spread/subset.ts'

type State = (z: Float64Array) => number
const each =
  (state: State): LimitState =>
  async (points) =>
    points.map(state)
const run = (state: State, wish: Wish) => rareShare(each(state), wish)
const shareOf = (found: Rare) => {
  if (found.kind !== 'share') throw new Error(found.kind)
  return found
}
const linear = (beta: number) => (z: Float64Array) => beta - z.reduce((sum, one) => sum + one, 0) / Math.sqrt(z.length)

/** Repeats of one question: true scatter about the truth, what was claimed, and points taken, as means. */
async function repeats(state: State, dimension: number, truth: number, count: number, size?: number) {
  let [square, claimed, evaluations, held] = [0, 0, 0, 0]
  for (let seed = 0; seed < count; seed++) {
    const found = shareOf(await run(state, { dimension, seed, size }))
    square += (found.share / truth - 1) ** 2 / count
    claimed += found.variation / count
    evaluations += found.evaluations / count
    if (Math.abs(found.share - truth) < 2 * found.variation * found.share) held += 100 / count
  }
  return { scatter: Math.sqrt(square), claimed, evaluations, held }
}

describe('a failure of one in ten thousand', () => {
  it('takes fifty times fewer points than plain sampling to the same certainty, by the true scatter of 40 repeats', async () => {
    const { scatter, claimed, evaluations, held } = await repeats(linear(3.719016), 5, 1e-4, 40)
    // Plain sampling has the variation √((1 − p)/(p·n)): closed form.
    const plain = (1 - 1e-4) / 1e-4 / scatter ** 2
    expect(plain / evaluations).toBeGreaterThan(50)
    // What it claims is what it does: the scatter of 40 is known to 11 %.
    expect(scatter / claimed).toBeLessThan(1.4)
    expect(held).toBeGreaterThan(85)
  })

  it('is found as well in steps that rank no finer than a quarter', async () => {
    const { scatter, claimed } = await repeats((z) => Math.ceil(4 * linear(3.719016)(z)) / 4, 5, 1e-4, 15)
    expect(scatter / claimed).toBeLessThan(1.5)
  })

  it('lies where it is likeliest, to a tenth', async () => {
    const { likeliest } = shareOf(await run(linear(3.719016), { dimension: 4, seed: 1 }))
    expect(linear(3.719016)(likeliest)).toBeLessThanOrEqual(0)
    expect(Math.sqrt(likeliest.reduce((sum, z) => sum + z * z, 0))).toBeLessThan(3.719 + 0.1)
  })
})

describe('failures all about the middle', () => {
  it('are not taken for those on one side', async () => {
    // Outside a sphere of radius 4.6: the law of χ with three degrees of freedom (closed form), √(2/π)·r·e^(−r²/2) + 2Φ(−r).
    const truth = Math.sqrt(2 / Math.PI) * 4.6 * Math.exp(-(4.6 ** 2) / 2) + 4.2249e-6
    const { scatter } = await repeats((z) => 4.6 - Math.sqrt(z.reduce((sum, one) => sum + one * one, 0)), 3, truth, 15)
    expect(scatter).toBeLessThan(0.18)
  })
})

describe('an answer', () => {
  it('is the same for the same seed, whatever else; asks in batches', async () => {
    const sizes: number[] = []
    const limit: LimitState = async (points) => {
      sizes.push(points.length)
      return points.map(linear(3))
    }
    const wish = { dimension: 3, seed: 7 }
    const found = shareOf(await rareShare(limit, wish))
    expect(await run(linear(3), wish)).toEqual(found)
    expect((await run(linear(3), { ...wish, seed: 8 })).levels).not.toEqual(found.levels)
    expect(sizes.reduce((a, b) => a + b, 0)).toBe(found.evaluations)
    // A generation of chains at once: fifty points, but for the few along the rays at the end.
    expect(sizes.filter((size) => size < 50).length).toBeLessThanOrEqual(2 * 2 + 1)
  })

  it('of a common failure comes without levels', async () => {
    const found = shareOf(await run(linear(0), { dimension: 2, seed: 1 }))
    expect(found.levels).toEqual([])
    expect(Math.abs(found.share - 0.5)).toBeLessThan(4 * found.variation * found.share)
  })

  it('of what is rarer than can be told says so, with the nearest that was met', async () => {
    const found = await run(linear(8), { dimension: 3, seed: 1 })
    if (found.kind !== 'below') throw new Error(found.kind)
    expect(found.share).toBe(LEAST)
    expect(found.nearest).toBeGreaterThan(0)
    expect(linear(8)(found.point)).toBe(found.nearest)
    expect(found.levels).toHaveLength(7)
  })

  it('does not pretend where nothing leads the way', async () => {
    const plateau = await run((z) => (linear(3)(z) <= 0 ? -1 : 1), { dimension: 3, seed: 1 })
    expect(plateau).toMatchObject({ kind: 'flat', at: 1, share: 1, levels: [] })
    // A slope that ends in a plain.
    const plain = await run((z) => Math.max(linear(3)(z), 1), { dimension: 3, seed: 1 })
    expect(plain).toMatchObject({ kind: 'flat', at: 1 })
    expect(plain.kind === 'flat' && plain.share < 0.03 && plain.failed === 0).toBe(true)
    // What never touches has no state at all.
    expect(await run(() => Number.POSITIVE_INFINITY, { dimension: 3, seed: 1 })).toMatchObject({
      kind: 'flat',
      share: 1,
    })
  })
})

describe('the variation of a level', () => {
  const points = Array.from({ length: 100 }, (_, k) => ({ point: new Float64Array(1), state: k < 10 ? 0 : 1 }))
  const independent = Math.sqrt(0.9 / (100 * 0.1))

  it('is that of independent points, or more where chains stay where they are', () => {
    expect(variationOf({ points, chains: null }, 0)).toBeCloseTo(independent, 12)
    const stuck = Array.from({ length: 10 }, (_, chain) => Array.from({ length: 10 }, (_, k) => 10 * chain + k))
    // Ten chains, each all of one kind: as good as ten points.
    expect(variationOf({ points, chains: stuck }, 0)).toBeCloseTo(Math.sqrt(0.9 / (10 * 0.1)), 1)
    const mixed = Array.from({ length: 10 }, (_, chain) => Array.from({ length: 10 }, (_, k) => chain + 10 * k))
    expect(variationOf({ points, chains: mixed }, 0)).toBeGreaterThanOrEqual(independent)
  })
})

describe('groups of failures', () => {
  const normal = normals(5)
  const cloud = (x: number, y: number) => Array.from({ length: 100 }, () => Float64Array.of(x + normal(), y + normal()))
  const places = (points: Float64Array[]) => points.map(([x, y]) => [Math.round(x!) + 0, Math.round(y!) + 0]).sort()

  it('are as many as lie apart: four, two, one', () => {
    const four = [cloud(4, 0), cloud(-4, 0), cloud(0, 4), cloud(0, -4)].flat()
    expect(places(centresOf(four))).toEqual(
      [
        [-4, 0],
        [0, -4],
        [0, 4],
        [4, 0],
      ].sort(),
    )
    expect(places(centresOf([...cloud(4, 0), ...cloud(-4, 0)]))).toEqual(
      [
        [-4, 0],
        [4, 0],
      ].sort(),
    )
    expect(places(centresOf(cloud(4, 0)))).toEqual([[4, 0]])
    expect(places(centresOf([Float64Array.of(3, 3)]))).toEqual([[3, 3]])
  })
})
