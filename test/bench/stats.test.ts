import { expect, it } from 'vitest'
import { least, median, percentile, spread } from './stats.ts'

it('sorts by number, not by text', () => {
  expect(median([100, 9, 20])).toBe(20)
  expect(least([100, 20, 9])).toBe(9)
})

it('takes the middle of an even count', () => {
  expect(median([4, 1, 3, 2])).toBe(2.5)
})

it('interpolates percentiles between closest ranks', () => {
  // Type 7 of Hyndman and Fan (1996): rank 1 + (n − 1)·p.
  expect(percentile([50, 15, 40, 20, 35], 40)).toBeCloseTo(29, 12)
  expect(percentile([1, 2, 3, 4], 95)).toBeCloseTo(3.85, 12)
  expect([0, 50, 95, 100].map((percent) => percentile([7], percent))).toEqual([7, 7, 7, 7])
  expect(percentile([3, 1, 2], 100)).toBe(3)
  expect(percentile([3, 1, 2], 0)).toBe(1)
})

it('states the spread as the median distance from the median', () => {
  expect(spread([1, 1, 2, 2, 4, 6, 9])).toBe(1)
  expect(spread([5])).toBe(0)
})

it('leaves its input alone and refuses to summarise nothing', () => {
  const values = [3, 1, 2]
  median(values)
  expect(values).toEqual([3, 1, 2])
  expect(() => median([])).toThrow(RangeError)
})
