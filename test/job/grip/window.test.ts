import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../sim/axis/arm.ts'
import { armOf } from '../../../sim/axis/fill-arm.ts'
import { forceWindow } from '../../../sim/index.ts'
import { neededForce } from '../../../sim/job/grip/window.ts'
import { liftTime } from '../../../sim/scenario/lift.ts'
import { make } from '../../scenario/make.ts'

const move = { start: 0.9, axis: 'up', acceleration: 5, duration: 0.4, jerk: 200 }

describe('forceWindow', () => {
  it('at rest is the weight over two contacts', () => {
    expect(forceWindow(make()).least).toBeCloseTo((0.25 * GRAVITY) / (2 * 0.5), 12)
  })

  it('takes the worst instant of the moves: upwards with the weight, sideways across it', () => {
    const least = (edits: object, gravity = 'across') =>
      forceWindow(make({ arm: { gravity, moves: [{ ...move, ...edits }] } })).least
    expect(least({})).toBeCloseTo(0.25 * (GRAVITY + 5), 9)
    expect(least({ axis: 'across' })).toBeCloseTo(0.25 * Math.hypot(GRAVITY, 5), 9)
    expect(least({ axis: 'up', acceleration: -5 })).toBeCloseTo(0.25 * (GRAVITY + 5), 9) // it has to stop as well
    expect(least({ axis: 'along', acceleration: 50, jerk: 1e5 }, 'none')).toBeCloseTo((0.25 * 50) / 2, 9)
  })

  it('finds the worst instant of moves that overlap: where one ends its plateau while another still changes', () => {
    const least = (second: object) =>
      forceWindow(make({ arm: { gravity: 'none', moves: [move, { ...move, jerk: 20, start: 1, ...second }] } })).least
    // The first holds 5 m/s² until 1.075 s, when the second has come to 1.5; from 1.125 s on it holds −5.
    expect(least({})).toBeCloseTo(0.25 * 6.5, 9)
    expect(least({ acceleration: -5 })).toBeCloseTo(0.25 * 6.5, 9)
  })

  it('is what a fine search of the run finds', () => {
    const moves = fc.array(
      fc.record({
        start: fc.double({ min: 0.3, max: 1, noNaN: true }),
        axis: fc.constantFrom('up', 'across', 'along'),
        acceleration: fc.double({ min: -20, max: 20, noNaN: true }),
        duration: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        jerk: fc.double({ min: 50, max: 2000, noNaN: true }),
      }),
      { minLength: 1, maxLength: 3 },
    )
    fc.assert(
      fc.property(moves, fc.constantFrom('across', 'along', 'none'), (list, gravity) => {
        const scenario = make({ arm: { gravity, moves: list } })
        const arm = armOf(scenario.arm)
        let worst = 0
        for (let t = liftTime(scenario); t <= 1.5; t += 5e-4) {
          arm.at(t)
          worst = Math.max(worst, neededForce(scenario, Math.hypot(arm.state.down, arm.state.side), arm.state.along))
        }
        const least = forceWindow(scenario).least ?? 0
        expect(least).toBeGreaterThanOrEqual(worst * (1 - 1e-9) - 1e-12)
        expect(least).toBeLessThanOrEqual(worst + 0.25 * 2000 * 5e-4)
      }),
      { numRuns: 50 },
    )
  })

  it('counts no move after the release', () => {
    const late = { moves: [move, { ...move, start: 1.35, acceleration: 50 }], gravity: 'none' }
    const until = (release: object) => forceWindow(make({ arm: late, events: { release } })).least
    expect(until({ time: 1.32 })).toBeCloseTo(0.25 * 5, 9)
    expect(until({ time: 1.4 })).toBeGreaterThan(0.25 * 5)
  })

  it('ends at the least of the damage limits, and nowhere without one', () => {
    expect(forceWindow(make()).most).toBeNull()
    expect(forceWindow(make({ part: { yieldForce: 40, crackForce: 60, markForce: 50 } })).most).toBe(40)
  })

  it('has no lower end where nothing pulls', () => {
    expect(forceWindow(make({ arm: { gravity: 'none' } })).least).toBeNull()
  })

  it('asks for more where friction falls with the load', () => {
    const least = (loadExponent: number) =>
      forceWindow(make({ part: { mass: 10 }, jaws: { friction: { loadExponent } } })).least!
    expect(least(1)).toBeCloseTo(10 * GRAVITY, 9)
    // µ = µ₀·(N/N₀)^(m−1), so µ₀·N₀·(N/N₀)^m = m g/2.
    const n = least(2 / 3)
    expect(2 * 0.5 * 20 * (n / 20) ** (2 / 3)).toBeCloseTo(10 * GRAVITY, 6)
  })
})
