/** Sobol' indices against the closed forms of two functions made for it. */
import { describe, expect, it } from 'vitest'
import { designOf, driversOf } from '../../sim/ask/spread/drivers.ts'
import { SAMPLINGS } from '../../sim/ask/spread/points.ts'

const ishigami = (u: Float64Array) => {
  const [x, y, z] = Array.from(u, (each) => Math.PI * (2 * each - 1)) as [number, number, number]
  return Math.sin(x) + 7 * Math.sin(y) ** 2 + 0.1 * z ** 4 * Math.sin(x)
}
const WEIGHTS = [0, 1, 4.5, 9, 99, 99, 99, 99]
const product = (u: Float64Array) =>
  u.reduce((all, each, k) => (all * (Math.abs(4 * each - 2) + WEIGHTS[k]!)) / (1 + WEIGHTS[k]!), 1)

/** Ishigami and Homma 1990; Saltelli and Sobol' 1995. */
const CASES = [
  {
    name: 'Ishigami',
    figure: ishigami,
    first: [0.313905, 0.442411, 0],
    total: [0.557589, 0.442411, 0.243684],
  },
  {
    name: 'g-function',
    figure: product,
    first: [0.716192, 0.179048, 0.0236758, 0.00716192, 7.16192e-5, 7.16192e-5, 7.16192e-5, 7.16192e-5],
    total: [0.787144, 0.242198, 0.0343169, 0.0104604, 1.04949e-4, 1.04949e-4, 1.04949e-4, 1.04949e-4],
  },
]

describe.each(CASES)('$name', ({ figure, first, total }) => {
  it.each(SAMPLINGS)(
    'is within 0.03 from 4,000 %s samples (10,000 random ones), and within its own limits or just beside',
    (sampling) => {
      const dimension = first.length
      const design = designOf({ sampling, dimension, seed: 1 })
      const rows = Array.from({ length: sampling === 'random' ? 10_000 : 4000 }, (_, index) =>
        Array.from({ length: dimension + 2 }, (_, part) => figure(design(index, part))),
      )
      for (const [k, driver] of driversOf(rows)!.entries()) {
        for (const [index, truth] of [
          [driver.first, first[k]!],
          [driver.total, total[k]!],
        ] as const) {
          expect(Math.abs(index.value - truth)).toBeLessThan(0.03)
          // 22 limits of 95 %: one or two may miss, none by more than its half-width.
          const spare = (index.high - index.low) / 2
          expect(truth).toBeGreaterThanOrEqual(index.low - spare)
          expect(truth).toBeLessThanOrEqual(index.high + spare)
        }
      }
    },
  )
})
