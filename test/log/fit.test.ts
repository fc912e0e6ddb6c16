import { describe, expect, it } from 'vitest'
import { type Compared, type FreeQuantity, fit } from '../../sim/log/fit.ts'
import type { Answer } from '../../sim/log/replay.ts'

const rows = 200
const first = Float64Array.from({ length: rows }, (_, k) => Math.sin(k / 7))
const second = Float64Array.from({ length: rows }, (_, k) => Math.sin(k / 7 + 0.4))
const mixed = (a: number, b: number) => first.map((each, k) => a * each + b * second[k]!)

const measured = mixed(3, 2)
const compared: Compared[] = [
  { recording: 0, channel: 'motorTravel', rows: Int32Array.from(measured.keys()), measured, scale: 1 },
]
const answers = async (sets: number[][]) =>
  sets.map(([a, b]) => [{ motorTravel: mixed(a!, b!) } as Partial<Answer> as Answer])
const free = (path: string, most: number): FreeQuantity => ({ path, start: 0.1, least: 0, most, small: 1e-3 })

describe('a fit of two quantities that go together', () => {
  it('finds both', async () => {
    const { values, settled } = await fit([free('a', 10), free('b', 10)], compared, answers)
    expect(values[0]).toBeCloseTo(3, 4)
    expect(values[1]).toBeCloseTo(2, 4)
    expect(settled).toBe(true)
  })

  it('brings one to the end of its range and the other to its best there (least squares in closed form), in few runs', async () => {
    const { values, settled, runs } = await fit([free('a', 1), free('b', 10)], compared, answers)
    const left = measured.map((each, k) => each - first[k]!)
    const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, each, k) => sum + each * b[k]!, 0)
    expect(values[0]).toBe(1)
    // A fit has settled where a step saves less than a thousandth of what is left.
    expect(Math.abs(values[1]! - dot(second, left) / dot(second, second))).toBeLessThan(1e-3)
    expect(settled).toBe(true)
    expect(runs).toBeLessThan(30)
  })
})
