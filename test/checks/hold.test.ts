import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../sim/axis/arm.ts'
import { forceWindow } from '../../sim/index.ts'
import { neededForce } from '../../sim/job/grip/window.ts'
import { bareJaws, runOpenLoop, scenarioOf } from './support.ts'

/**
 * Friction grip with two contacts: n µ F = m |g − a|, F the normal force of each contact (statics; M. P. Groover, Automation,
 * Production Systems, and Computer-Integrated Manufacturing, chapter on industrial robotics, eq. µ n F = w, from memory).
 */
const gripped = (mass: number, friction: number) =>
  scenarioOf({ part: { mass }, jaws: { friction: { static: friction, sliding: friction } } })

describe('force needed at each contact', () => {
  it('8 kg, µ 0.5, two fingers, g 9.8: 78.4 N (teaching problem, answer as published with it)', () => {
    expect(neededForce(gripped(8, 0.5), 9.8, 0)).toBeCloseTo(78.4, 9)
  })

  it('Groover: 10 lb, µ 0.25, two fingers, g-factor 3: 60 lb (from memory)', () => {
    const pounds = neededForce(gripped(10 * 0.45359237, 0.25), 3 * GRAVITY, 0) / (0.45359237 * GRAVITY)
    expect(pounds).toBeCloseTo(60, 9)
  })

  it.each([
    [5, 0, 18.5083],
    [0, 0, 12.2583],
    [0, 5, 13.7597],
  ])('0.5 kg, µ 0.2, lifted at %f and moved sideways at %f m/s²: %f N (closed form)', (up, side, force) => {
    expect(neededForce(gripped(0.5, 0.2), Math.hypot(GRAVITY + up, side), 0)).toBeCloseTo(force, 4)
  })

  it('along the grip each contact must spare m a/2 (statics of the part between two springs)', () => {
    expect(neededForce(gripped(0.4, 0.3), 0, -12)).toBeCloseTo(2.4, 9)
  })
})

describe('the window of a scenario is that of its worst instant', () => {
  const window = (...moves: object[]) =>
    forceWindow(
      scenarioOf({
        part: { mass: 0.5, markForce: 60, crackForce: 80 },
        jaws: { friction: { static: 0.2, sliding: 0.2 } },
        arm: { lift: 0.5, moves },
      }),
    )
  const move = { start: 0.6, duration: 0.4, jerk: 1000 }

  it('hangs', () => expect(window().least).toBeCloseTo(12.2583, 4))

  it('up, and slowing down at the end of a way down', () => {
    expect(window({ ...move, axis: 'up', acceleration: 5 }).least).toBeCloseTo(18.5083, 4)
    expect(window({ ...move, axis: 'up', acceleration: -5 }).least).toBeCloseTo(18.5083, 4)
  })

  it('sideways', () => expect(window({ ...move, axis: 'across', acceleration: 5 }).least).toBeCloseTo(13.7597, 4))

  it('two moves at once', () => {
    const least = window({ ...move, axis: 'across', acceleration: 5 }, { ...move, axis: 'up', acceleration: 5 }).least
    expect(least).toBeCloseTo((0.5 * Math.hypot(GRAVITY + 5, 5)) / 0.4, 4)
  })

  it('ends at the least damage limit', () => expect(window().most).toBe(60))
})

/** Jaws on soft pads that press 20 N on each side of 0.4 kg with µ 0.3; the move reaches `share` of the slip limit. */
function atLimit(axis: string, limit: number, share: number, layout: string, friction: object = {}) {
  const scenario = scenarioOf(bareJaws(0.2), {
    actuator: { motor: { movingMass: 0.2 }, transmission: { viscous: 30 } },
    jaws: {
      layout,
      friction: { static: 0.3, sliding: 0.25, ...friction },
      padStiffness: 1e6,
      padLength: 0.01,
      stroke: 0.05,
    },
    part: { mass: 0.4, damping: 1 },
    arm: {
      gravity: 'across',
      lift: 0.3,
      // The run ends while the move still speeds up, so that only one direction is asked of it.
      moves: [{ start: 0.35, axis, acceleration: limit * share, duration: 6, jerk: 60 }],
    },
    run: { duration: 1.6 },
  })
  const run = runOpenLoop(scenario, () => (layout === 'mirrored' ? 40 : 20))
  expect(run.metrics.settledForce).toBeCloseTo(20, 2)
  return run
}

describe('whole grips at the slip limit 2 µ F/m: 20 N a side, µ 0.3, 0.4 kg (statics)', () => {
  it.each([
    ['up', 20.1934, 'mirrored'],
    ['up', 20.1934, 'anvil'],
    ['up', -39.8067, 'mirrored'],
    ['across', 28.3519, 'mirrored'],
    ['across', 28.3519, 'anvil'],
  ])('%s at %f m/s², %s: holds at 99 %, slides at 101 %', (axis, limit, layout) => {
    const below = atLimit(axis, limit, 0.99, layout)
    expect(below.metrics.slipDistance).toBe(0)
    expect(below.events.slip).toBeNull()
    const above = atLimit(axis, limit, 1.01, layout)
    expect(above.events.slip).toBeGreaterThan(0.35)
    expect(above.events.drop).not.toBeNull()
  })

  it('soft round pads, µ = µ₀ (F/F₀)^(−1/3) (Bowden and Tabor 1950; area of Hertz): holds at 99 %, slides at 101 %', () => {
    const soft = { loadExponent: 2 / 3, referenceForce: 10 }
    const limit = (2 * 0.3 * (20 / 10) ** (-1 / 3) * 20) / 0.4 - GRAVITY
    const below = atLimit('up', limit, 0.99, 'mirrored', soft)
    expect(below.metrics.slipDistance).toBe(0)
    expect(below.metrics.requiredForce! / 20).toBeGreaterThan(0.985)
    expect(below.metrics.requiredForce! / 20).toBeLessThan(1)
    expect(atLimit('up', limit, 1.01, 'mirrored', soft).events.drop).not.toBeNull()
  })

  it('merely hanging: holds just above the window’s lower edge and slides just below it', () => {
    const hang = (share: number) => {
      const scenario = scenarioOf(bareJaws(0.2), {
        actuator: { motor: { movingMass: 0.2 }, transmission: { viscous: 30 } },
        jaws: { friction: { static: 0.3, sliding: 0.25 }, padStiffness: 2e5, padLength: 0.01 },
        part: { mass: 0.4, damping: 1 },
        arm: { gravity: 'across', lift: 0.3 },
        run: { duration: 0.8 },
      })
      return runOpenLoop(scenario, () => 2 * share * forceWindow(scenario).least!).metrics
    }
    expect(hang(1.01).slipDistance).toBe(0)
    expect(hang(1.01).holdMargin).toBeCloseTo(0.01, 3)
    expect(hang(0.99).slipDistance).toBeGreaterThan(0.005)
    expect(hang(0.99).holdMargin).toBeCloseTo(-0.01, 3)
  })

  it('a part that has slid past the pads falls as a mass under g − µk·2F/m (closed form)', () => {
    const scenario = scenarioOf(bareJaws(0.2), {
      actuator: { motor: { movingMass: 0.2 }, transmission: { viscous: 30 } },
      jaws: { friction: { static: 0.3, sliding: 0.2 }, padStiffness: 2e5, padLength: 0.02 },
      part: { mass: 0.4, damping: 1 },
      arm: { gravity: 'across', lift: 0.3 },
      run: { duration: 0.8 },
    })
    const { events } = runOpenLoop(scenario, () => 10)
    const fall = GRAVITY - (0.2 * 10) / 0.4
    expect((events.drop! - events.slip!) / Math.sqrt((2 * 0.02) / fall)).toBeCloseTo(1, 2)
  })
})
