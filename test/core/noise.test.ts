import { describe, expect, it } from 'vitest'
import { seeded } from '../../sim/core/noise.ts'

const N = 100_000
const normals = (seed: number) => {
  const noise = seeded(seed)
  return Array.from({ length: N }, () => noise.normal())
}
const mean = (list: number[]) => list.reduce((sum, value) => sum + value, 0) / list.length
/** Standard errors allowed of an estimate from N values; one run in about two million would leave them by chance. */
const SIGMAS = 5

describe.each([0, 1, 42, 4294967295])('Noise from seed %d', (seed) => {
  const list = normals(seed)

  it('has mean 0, rms 1 and the kurtosis of four uniform draws, 3 − 1.2/4', () => {
    expect(Math.abs(mean(list))).toBeLessThan(SIGMAS / Math.sqrt(N))
    const square = mean(list.map((value) => value ** 2))
    expect(Math.abs(square - 1)).toBeLessThan(SIGMAS * Math.sqrt(1.7 / N))
    expect(Math.abs(mean(list.map((value) => value ** 4)) - 2.7)).toBeLessThan(0.1)
    expect(Math.abs(mean(list.map((value) => value ** 3)))).toBeLessThan(0.06)
  })

  it('stays within ±√12', () => {
    expect(Math.max(...list.map(Math.abs))).toBeLessThanOrEqual(Math.sqrt(12))
  })

  it('does not remember: neighbours are uncorrelated', () => {
    for (const lag of [1, 2, 3, 7]) {
      const product = mean(list.slice(lag).map((value, n) => value * list[n]!))
      expect(Math.abs(product)).toBeLessThan(SIGMAS / Math.sqrt(N))
    }
  })

  it('fills [0, 1) evenly with its uniform draws', () => {
    const noise = seeded(seed)
    const counts = new Array<number>(64).fill(0)
    for (let n = 0; n < N; n++) {
      const value = noise.uniform()
      counts[Math.floor(value * 64)]!++
    }
    expect(Object.keys(counts)).toHaveLength(64) // a value outside [0, 1) would have made another place
    // Chi-square with 63 degrees of freedom: mean 63, standard deviation √126.
    const chi2 = counts.reduce((sum, count) => sum + (count - N / 64) ** 2 / (N / 64), 0)
    expect(Math.abs(chi2 - 63)).toBeLessThan(SIGMAS * Math.sqrt(126))
  })

  it('is the same again from the same seed, and another from the next', () => {
    expect(normals(seed)).toEqual(list)
    const other = normals((seed + 1) % 4294967296)
    expect(Math.abs(mean(other.map((value, n) => value * list[n]!)))).toBeLessThan(SIGMAS / Math.sqrt(N))
  })
})
