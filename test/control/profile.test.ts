import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ramp } from '../../sim/control/profile.ts'
import { type ProfileOptions, profileOf, sCurveOf } from './support.ts'

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const limits = { speed: positive(0.01, 2), acceleration: positive(0.1, 50), jerk: positive(5, 5000) }
const plain = fc.record({ ...limits, distance: positive(1e-9, 0.3) })
const creeping = fc.record({
  ...limits,
  distance: positive(1e-4, 0.3),
  creepSpeed: positive(1e-3, 2),
  creepFrom: positive(-0.05, 0.35),
})
const approach: ProfileOptions = { distance: 0.04, speed: 0.2, acceleration: 2, jerk: 40 }

function sampled(options: ProfileOptions, count = 400) {
  const profile = profileOf(options)
  return Array.from({ length: count + 1 }, (_, n) => {
    const time = (n / count) * profile.duration
    profile.at(time)
    const { position, speed, acceleration } = profile
    return { time, position, speed, acceleration }
  })
}

/** Speed at the moment the position reaches `distance`, by bisection of the time. */
function speedAt(options: ProfileOptions, distance: number): number {
  const profile = profileOf(options)
  let [early, late] = [0, profile.duration]
  for (let i = 0; i < 80; i++) {
    const middle = (early + late) / 2
    profile.at(middle)
    if (profile.position < distance) early = middle
    else late = middle
  }
  profile.at(late)
  return profile.speed
}

describe('Profile', () => {
  it('runs from rest at 0 to rest at the distance, and stays there', () => {
    fc.assert(
      fc.property(fc.oneof(plain, creeping), (options) => {
        const profile = profileOf(options)
        profile.at(-1)
        expect([profile.position, profile.speed, profile.acceleration]).toEqual([0, 0, 0])
        for (const time of [profile.duration, profile.duration + 1]) {
          profile.at(time)
          expect([profile.position, profile.speed, profile.acceleration]).toEqual([options.distance, 0, 0])
        }
      }),
    )
  })

  it('never goes back nor exceeds the speed and the acceleration', () => {
    fc.assert(
      fc.property(fc.oneof(plain, creeping), (options) => {
        const list = sampled(options)
        const steps = list.slice(1).map(({ position }, n) => position - list[n]!.position)
        const speeds = list.map(({ speed }) => speed)
        const accelerations = list.map(({ acceleration }) => Math.abs(acceleration))
        expect(Math.min(...steps)).toBeGreaterThanOrEqual(-1e-15)
        expect(Math.min(...speeds)).toBeGreaterThanOrEqual(-1e-12)
        expect(Math.max(...speeds)).toBeLessThanOrEqual(options.speed * (1 + 1e-12))
        expect(Math.max(...accelerations)).toBeLessThanOrEqual(options.acceleration * (1 + 1e-12))
      }),
    )
  })

  /*
   * With |jerk| ≤ j everywhere, Taylor's theorem about the middle of a stretch h bounds Δa by j h, Δv − h a by j h²/4 and
   * Δx − h v by j h³/24. So position, speed and acceleration belong together, have no jump, and the jerk is kept.
   */
  it('keeps the jerk, and its position, speed and acceleration are each the integral of the next', () => {
    fc.assert(
      fc.property(fc.oneof(plain, creeping), (options) => {
        const list = sampled(options)
        const h = list[2]!.time
        const worst = { acceleration: 0, speed: 0, position: 0 }
        for (let n = 2; n < list.length; n++) {
          const [from, middle, to] = [list[n - 2]!, list[n - 1]!, list[n]!]
          const gaps = {
            acceleration: to.acceleration - from.acceleration,
            speed: to.speed - from.speed - h * middle.acceleration,
            position: to.position - from.position - h * middle.speed,
          }
          for (const key of ['acceleration', 'speed', 'position'] as const)
            worst[key] = Math.max(worst[key], Math.abs(gaps[key]))
        }
        // What is added is the rounding of times, speeds and positions.
        const { acceleration, speed, jerk, distance } = options
        expect(worst.acceleration).toBeLessThanOrEqual(jerk * h * (1 + 1e-9) + acceleration * 1e-12)
        expect(worst.speed).toBeLessThanOrEqual((jerk * h ** 2) / 4 + (speed + acceleration * h) * 1e-12)
        expect(worst.position).toBeLessThanOrEqual((jerk * h ** 3) / 24 + (distance + speed * h) * 1e-12)
      }),
    )
  })

  it('takes no longer when any limit is raised', () => {
    fc.assert(
      fc.property(plain, positive(1, 3), fc.constantFrom('speed', 'acceleration', 'jerk'), (options, factor, key) => {
        const quicker = profileOf({ ...options, [key]: options[key as keyof typeof options] * factor })
        expect(quicker.duration).toBeLessThanOrEqual(profileOf(options).duration * (1 + 1e-9))
      }),
    )
  })

  it('runs a negative distance as the mirror image', () => {
    fc.assert(
      fc.property(creeping, positive(0, 1), (options, part) => {
        const [there, back] = [profileOf(options), profileOf({ ...options, distance: -options.distance })]
        there.at(part * there.duration)
        back.at(part * there.duration)
        expect(back.duration).toBe(there.duration)
        expect(there.position + back.position).toBe(0)
        expect(there.speed + back.speed).toBe(0)
        expect(there.acceleration + back.acceleration).toBe(0)
      }),
    )
  })

  it('gives the same state for a time asked in any order', () => {
    const times = fc.array(positive(-0.1, 1.2), { minLength: 1, maxLength: 30 })
    fc.assert(
      fc.property(creeping, times, (options, list) => {
        const profile = profileOf(options)
        for (const part of list) {
          const fresh = profileOf(options)
          fresh.at(part * fresh.duration)
          profile.at(part * profile.duration)
          expect(profile.position).toBe(fresh.position)
          expect(profile.speed).toBe(fresh.speed)
        }
      }),
    )
  })

  it('without a limit of jerk steps the acceleration', () => {
    const profile = profileOf({ distance: 0.05, speed: 0.2, acceleration: 2, jerk: Infinity })
    const states = [0.05, 0.2, 0.3].map((time) => {
      profile.at(time)
      return [profile.position, profile.speed, profile.acceleration].map((x) => Number(x.toFixed(12)))
    })
    expect(states).toEqual([
      [0.0025, 0.1, 2],
      [0.03, 0.2, 0],
      [0.0475, 0.1, -2],
    ])
  })

  it('does nothing for a distance of 0', () => {
    const profile = profileOf({ ...approach, distance: 0 })
    profile.at(0.1)
    expect([profile.duration, profile.position, profile.speed]).toEqual([0, 0, 0])
  })
})

describe('creep zone', () => {
  it('is never entered nor crossed faster than creepSpeed', () => {
    fc.assert(
      fc.property(creeping, (options) => {
        for (const { position, speed } of sampled(options))
          if (position >= options.creepFrom) expect(speed).toBeLessThanOrEqual(options.creepSpeed * (1 + 1e-9))
      }),
    )
  })

  it('is entered at exactly creepSpeed without acceleration, and crossed at it until the jaw stops', () => {
    const options = { ...approach, creepSpeed: 0.05, creepFrom: 0.034 }
    const profile = profileOf(options)
    const slowdown = ramp(0.2, 0.05, 2, 40)
    expect(speedAt(options, 0.034 - slowdown.distance)).toBeCloseTo(0.2, 9)
    expect(speedAt(options, 0.034)).toBeCloseTo(0.05, 9)
    const stop = ramp(0.05, 0, 2, 40)
    const creepTime = (0.04 - 0.034 - stop.distance) / 0.05
    expect(profile.duration).toBeCloseTo(
      ramp(0, 0.2, 2, 40).duration +
        (0.034 - ramp(0, 0.2, 2, 40).distance - slowdown.distance) / 0.2 +
        slowdown.duration +
        creepTime +
        stop.duration,
      12,
    )
    profile.at(profile.duration - stop.duration - creepTime / 2)
    expect(profile.speed).toBe(0.05)
    expect(profile.acceleration).toBe(0)
  })

  it('changes nothing where it cannot bind: left out, at or past the end, or no slower than the approach', () => {
    const { duration } = profileOf(approach)
    for (const creep of [
      { creepSpeed: 0.05 },
      { creepSpeed: 0.05, creepFrom: Infinity },
      { creepSpeed: 0.05, creepFrom: 0.04 },
      { creepSpeed: 0.05, creepFrom: 1 },
      { creepSpeed: 0.2, creepFrom: 0.03 },
      { creepSpeed: 3, creepFrom: 0 },
    ])
      expect(profileOf({ ...approach, ...creep }).duration).toBe(duration)
  })

  it.each([-0.01, 0, 1e-4])(
    'that starts at %f m, before creepSpeed can be reached from rest, covers the whole move',
    (creepFrom) => {
      const profile = profileOf({ ...approach, creepSpeed: 0.05, creepFrom })
      expect(profile.peakSpeed).toBe(0.05)
      expect(profile.duration).toBe(profileOf({ ...approach, speed: 0.05 }).duration)
    },
  )

  it('whose length does not suffice to stop from creepSpeed is entered at the highest speed that can still stop', () => {
    const stop = ramp(0.05, 0, 2, 40).distance
    const options = { ...approach, creepSpeed: 0.05, creepFrom: 0.04 - stop / 2 }
    const entry = speedAt(options, options.creepFrom)
    expect(entry).toBeLessThan(0.05)
    expect(ramp(entry, 0, 2, 40).distance).toBeCloseTo(stop / 2, 9)
  })

  it('that shrinks to nothing lets the duration run into that of the plain move', () => {
    const { duration } = profileOf(approach)
    const almost = profileOf({ ...approach, creepSpeed: 0.05, creepFrom: 0.04 - 1e-12 })
    expect(Math.abs(almost.duration - duration)).toBeLessThan(1e-3)
  })
})

describe('ramp', () => {
  it('takes no time for no change and is the same both ways', () => {
    expect(ramp(0.3, 0.3, 2, 40)).toMatchObject({ duration: 0, distance: 0, acceleration: 0 })
    const [up, down] = [ramp(0.1, 0.5, 2, 40), ramp(0.5, 0.1, 2, 40)]
    expect(down.duration).toBe(up.duration)
    expect(down.distance).toBe(up.distance)
    expect(down.acceleration).toBe(-up.acceleration)
  })

  it('has no phase of constant acceleration below the change a²/j', () => {
    const short = ramp(0, 0.05, 2, 40)
    expect(short.duration).toBe(2 * short.jerkTime)
    expect(short.acceleration).toBeCloseTo(Math.sqrt(0.05 * 40), 12)
    expect(ramp(0, 0.1, 2, 40).duration).toBeCloseTo(0.1, 12)
    expect(ramp(0, 0.2, 2, 40).duration).toBeCloseTo(0.2 / 2 + 2 / 40, 12)
  })
})

describe('sCurve', () => {
  it('adds up to the distance', () => {
    fc.assert(
      fc.property(plain, positive(0, 1), positive(0, 1), (options, from, to) => {
        const [v0, v1] = [from * options.speed, to * options.speed]
        const distance = options.distance + ramp(v0, v1, options.acceleration, options.jerk).distance
        const { up, down, cruise, peakSpeed } = sCurveOf({ ...options, distance, v0, v1 })
        expect(up.distance + cruise * peakSpeed + down.distance).toBeCloseTo(distance, 12)
        expect(peakSpeed).toBeLessThanOrEqual(options.speed)
        expect(peakSpeed).toBeGreaterThanOrEqual(Math.max(v0, v1))
      }),
    )
  })

  it('takes no time for a distance of 0', () => {
    const still = sCurveOf({ distance: 0, v0: 0, v1: 0, speed: 1, acceleration: 2, jerk: 40 })
    expect([still.duration, still.cruise, still.peakSpeed]).toEqual([0, 0, 0])
  })
})
