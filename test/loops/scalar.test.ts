import { describe, expect, it } from 'vitest'
import { root, summit } from '../../sim/loops/scalar.ts'

describe('the summit of a list of values', () => {
  const angles = Float64Array.from({ length: 9 }, (_, i) => 0.1 * (i + 1))
  const at = (f: (angle: number) => number) => summit(angles.map(f), angles, f)

  it('is at an end where the values fall or rise throughout', () => {
    expect(at((x) => 1 / x)).toEqual({ angle: angles[0], value: 1 / angles[0]! })
    expect(at((x) => x * x)).toEqual({ angle: angles[8], value: angles[8]! ** 2 })
  })

  it('is found between the angles of the list', () => {
    const found = at((x) => 2 - (x - 0.437) ** 2)
    expect(Math.abs(found.angle - 0.437)).toBeLessThan(1e-6)
    expect(Math.abs(found.value - 2)).toBeLessThan(1e-12)
  })
})

it('a root is found between two angles of differing sign, whichever comes first', () => {
  expect(Math.abs(root(Math.cos, 1, 2) - Math.PI / 2)).toBeLessThan(1e-12)
  expect(Math.abs(root((x) => Math.exp(x) - 2, 0, 3) - Math.LN2)).toBeLessThan(1e-12)
})
