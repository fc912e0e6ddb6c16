import { describe, expect, it } from 'vitest'
import { delayOf, lagOf, startOf } from '../../sim/log/align.ts'

describe('lag by correlation', () => {
  // Closed form of a parabola through three points of a cosine of ten samples: tan θ · sin φ / (2 (1 − cos φ)), φ = 2π/10, θ = φ · fraction.
  it.each([
    [0.1, 0.096816],
    [0.25, 0.243729],
    [0.5, 0.5],
  ])('of a cosine of ten samples, %d of a sample late', (fraction, expected) => {
    const cosine = (late: number) =>
      Float64Array.from({ length: 20000 }, (_, k) => Math.cos((2 * Math.PI * (k - late)) / 10))
    expect(Math.abs(lagOf(cosine(0), cosine(fraction), 4)!)).toBeCloseTo(expected, 3)
  })

  it('finds whole rows either way, whatever the offset', () => {
    const bump = (at: number) => Float64Array.from({ length: 400 }, (_, k) => 7 + Math.exp(-(((k - at) / 9) ** 2)))
    expect(lagOf(bump(200), bump(213), 40)).toBeCloseTo(13, 2)
    expect(lagOf(bump(200), bump(187), 40)).toBeCloseTo(-13, 2)
  })

  it('as a time, of rates of change', () => {
    const time = Float64Array.from({ length: 500 }, (_, k) => k / 1000)
    const move = (late: number) => time.map((t) => 1 / (1 + Math.exp(-(t - 0.25 - late) / 0.02)))
    expect(delayOf(time, move(0), move(0.0073), 0.05)).toBeCloseTo(0.0073, 4)
  })

  it('has none of a signal that never changes', () => {
    const still = new Float64Array(100)
    expect(lagOf(still, still, 10)).toBeNull()
  })
})

describe('where something begins', () => {
  it('is the first row clearly above the scatter before', () => {
    const values = Float64Array.from(
      { length: 300 },
      (_, k) => 0.01 * Math.sin(k * 12.9898) + (k < 120 ? 0 : (k - 120) * 0.05),
    )
    expect(startOf(values)).toBeGreaterThanOrEqual(120)
    expect(startOf(values)).toBeLessThan(124)
  })

  it('is nowhere in a signal that stays', () => {
    expect(startOf(Float64Array.from({ length: 300 }, (_, k) => 0.01 * Math.sin(k * 12.9898)))).toBe(-1)
  })
})
