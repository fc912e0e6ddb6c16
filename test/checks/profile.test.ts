import { describe, expect, it } from 'vitest'
import { ramp } from '../../sim/control/profile.ts'
import { profileOf, sCurveOf } from '../control/support.ts'

describe('trapezoid of speed: T = h/v + v/a, or 2 √(h/a) with peak √(h a) when v is not reached (closed form)', () => {
  const limits = { speed: 0.2, acceleration: 2, jerk: Infinity }

  it('covers 50 mm in 0.35 s', () => {
    expect(profileOf({ distance: 0.05, ...limits }).duration).toBeCloseTo(0.35, 12)
  })

  it('covers 5 mm in 0.1 s with a peak of 0.1 m/s', () => {
    const profile = profileOf({ distance: 0.005, ...limits })
    expect(profile.duration).toBeCloseTo(0.1, 12)
    expect(profile.peakSpeed).toBeCloseTo(0.1, 12)
  })

  it('reaches the speed from 20 mm on: v²/a', () => {
    expect(profileOf({ distance: 0.02, ...limits }).peakSpeed).toBeCloseTo(0.2, 12)
    expect(profileOf({ distance: 0.0199, ...limits }).peakSpeed).toBeCloseTo(Math.sqrt(0.0199 * 2), 12)
  })
})

describe('jerk-limited move, v 0.2 m/s, a 2 m/s², j 40 m/s³ (closed forms for v reached, a reached, neither)', () => {
  it.each([
    [50, 0.4, 0.2, 2],
    [20, 0.256155, 0.156155, 2],
    [10, 0.2, 0.1, 2],
    [5, 0.15874, 0.0629961, 1.5874],
    [1, 0.0928318, 0.0215443, 0.928318],
  ])('%f mm takes %f s, peaks at %f m/s and %f m/s²', (millimetres, duration, peakSpeed, peakAcceleration) => {
    const distance = millimetres / 1000
    const profile = profileOf({ distance, speed: 0.2, acceleration: 2, jerk: 40 })
    expect(profile.duration).toBeCloseTo(duration, 6)
    expect(profile.peakSpeed).toBeCloseTo(peakSpeed, 6)
    let peak = 0
    for (let n = 0; n <= 8000; n++) {
      profile.at((n / 8000) * profile.duration)
      peak = Math.max(peak, Math.abs(profile.acceleration))
    }
    expect(peak).toBeCloseTo(peakAcceleration, 5)
  })
})

describe('Biagiotti and Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), double-S examples (from memory)', () => {
  const book = { distance: 10, v1: 0, acceleration: 10, jerk: 30 }

  it('v0 1, vmax 5: Ta 0.733333, Tv 1.143333, Td 0.833333, Tj 0.333333, T 2.71', () => {
    const curve = sCurveOf({ ...book, v0: 1, speed: 5 })
    expect(curve.up.duration).toBeCloseTo(0.733333, 6)
    expect(curve.cruise).toBeCloseTo(1.143333, 6)
    expect(curve.down.duration).toBeCloseTo(0.833333, 6)
    expect(curve.up.jerkTime).toBeCloseTo(0.333333, 6)
    expect(curve.duration).toBeCloseTo(2.71, 6)
  })

  it('v0 1, vmax 10: Ta 1.074690, Tv 0, Td 1.174690, peak 8.413567', () => {
    const curve = sCurveOf({ ...book, v0: 1, speed: 10 })
    expect(curve.up.duration).toBeCloseTo(1.07469, 6)
    expect(curve.cruise).toBeCloseTo(0, 6)
    expect(curve.down.duration).toBeCloseTo(1.17469, 6)
    expect(curve.peakSpeed).toBeCloseTo(8.413567, 6)
  })

  /*
   * From v0 = 7 and 7.5 the ramp up is too short to reach the acceleration limit. The book then lowers the limit of both
   * ramps in steps of 1 % until each reaches it (6.964132 and 2.919008 m/s²). Handed that limit, our curve is the book's;
   * with the full limit on the ramp down it is quicker.
   */
  it('v0 7, vmax 10, at the limit that the book settles on: Ta 0.466609, Td 1.471760, peak 8.632892', () => {
    const curve = sCurveOf({ ...book, v0: 7, speed: 10, acceleration: 6.964132 })
    expect(curve.up.duration).toBeCloseTo(0.466609, 3)
    expect(curve.down.duration).toBeCloseTo(1.47176, 5)
    expect(curve.up.jerkTime).toBeCloseTo(0.232138, 3)
    expect(curve.peakSpeed).toBeCloseTo(8.632892, 4)
  })

  it('v0 7, vmax 10, at the full limit: quicker than the 1.93309 s to which the book converges for ever finer steps', () => {
    const curve = sCurveOf({ ...book, v0: 7, speed: 10 })
    expect(curve.duration).toBeLessThan(1.93309)
    const [change, peak] = [curve.peakSpeed - 7, curve.peakSpeed]
    expect(curve.up.duration).toBeCloseTo(2 * Math.sqrt(change / 30), 12)
    expect(curve.down.duration).toBeCloseTo(peak / 10 + 10 / 30, 12)
  })

  it('v0 7.5: at the limit that the book settles on the ramp down alone takes 2.666667 s, with Tj 0.0973003', () => {
    const down = ramp(7.5, 0, 2.919008, 30)
    expect(down.duration).toBeCloseTo(2.666667, 5)
    expect(down.jerkTime).toBeCloseTo(0.0973003, 7)
    expect(down.distance).toBeCloseTo(10, 5)
    expect(sCurveOf({ ...book, v0: 7.5, speed: 10 }).duration).toBeLessThan(2.666667)
  })
})

describe('quintic 50 mm in 0.3 s: peaks 15h/8T = 0.3125 m/s, 10h/(√3 T²) = 3.207501 m/s², jerk 60h/T³ (closed form)', () => {
  const limits = { distance: 0.05, speed: 0.3125, acceleration: 3.207502, jerk: (60 * 0.05) / 0.3 ** 3 }

  it('is one of the moves that keep those limits, so the quickest of them takes no longer', () => {
    const { duration } = profileOf(limits)
    expect(duration).toBeLessThanOrEqual(0.3)
    expect(duration).toBeGreaterThan(0.05 / 0.3125)
  })

  it('and no move keeps limits so tight that even the trapezoid needs longer', () => {
    expect(profileOf({ ...limits, acceleration: 2 }).duration).toBeGreaterThan(0.3)
  })
})
