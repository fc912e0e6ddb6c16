import { expect, it } from 'vitest'
import { rowAt } from '../../../../app/read/press/traces.ts'

it('finds the last row at or before a time', () => {
  const times = Float64Array.from([0, 0.1, 0.1, 0.3])
  expect([-1, 0, 0.05, 0.1, 0.29, 0.3, 9].map((time) => rowAt(times, time))).toEqual([0, 0, 0, 2, 2, 3, 3])
  expect(rowAt(new Float64Array(0), 1)).toBe(0)
})
