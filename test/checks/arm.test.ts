import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../sim/axis/arm.ts'
import { accelerationOf, armOf } from '../../sim/axis/fill-arm.ts'
import type { ArmMove } from '../../sim/index.ts'
import { scenarioOf } from './support.ts'

const STEPS = 200_000

/** Integrates the acceleration twice by the trapezoidal rule: end speed, way, peak speed and peak acceleration. */
function travel(move: ArmMove) {
  const step = move.duration / STEPS
  let speed = 0
  let way = 0
  let peakSpeed = 0
  let peak = 0
  let last = 0
  let steepest = 0
  for (let n = 1; n <= STEPS; n++) {
    const a = accelerationOf(move, move.start + n * step)
    const next = speed + 0.5 * step * (a + last)
    way += 0.5 * step * (speed + next)
    steepest = Math.max(steepest, Math.abs(a - last) / step)
    speed = next
    last = a
    peakSpeed = Math.max(peakSpeed, Math.abs(speed))
    peak = Math.max(peak, Math.abs(a))
  }
  return { speed, way, peakSpeed, peak, steepest }
}

/**
 * Time for a way h from rest to rest: acceleration reached, T = Tj + √(Tj² + 4h/a) with Tj = a/j; not reached, T = 4 (h/2j)^⅓
 * (Biagiotti and Melchiorri, Trajectory Planning for Automatic Machines and Robots, 2008, §3.4, for a speed limit not reached).
 */
const moveTime = (h: number, a: number, j: number) =>
  h < (2 * a ** 3) / j ** 2 ? 4 * (h / (2 * j)) ** (1 / 3) : a / j + Math.sqrt((a / j) ** 2 + (4 * h) / a)

describe('jerk-limited arm move, 2 m/s², 40 m/s³', () => {
  it.each([
    [20, 0.256155, 0.156155, 2],
    [10, 0.2, 0.1, 2],
    [5, 0.15874, 0.0629961, 1.5874],
    [1, 0.0928318, 0.0215443, 0.928318],
  ])('%f mm take %f s, with peaks of %f m/s and %f m/s²', (millimetres, duration, peakSpeed, peak) => {
    const h = millimetres / 1000
    expect(moveTime(h, 2, 40)).toBeCloseTo(duration, 6)
    for (const sign of [1, -1]) {
      const moved = travel({ start: 0.3, axis: 'up', acceleration: 2 * sign, duration: moveTime(h, 2, 40), jerk: 40 })
      expect(moved.way).toBeCloseTo(sign * h, 8)
      expect(moved.speed).toBeCloseTo(0, 8)
      expect(moved.peakSpeed).toBeCloseTo(peakSpeed, 6)
      expect(moved.peak).toBeCloseTo(peak, 4)
      expect(moved.steepest).toBeLessThan(40 * 1.001)
    }
  })

  it('stands still before and after', () => {
    const move: ArmMove = { start: 0.3, axis: 'up', acceleration: 2, duration: 0.2, jerk: 40 }
    expect(accelerationOf(move, 0.299)).toBe(0)
    expect(accelerationOf(move, 0.501)).toBe(0)
  })
})

describe('what pulls on the part in the gripper’s frame: g − a (statics)', () => {
  const at = (gravity: string, axis: string) => {
    const move = { start: 0.1, axis, acceleration: 3, duration: 0.4, jerk: 1000 }
    const arm = armOf(scenarioOf({ arm: { gravity, moves: [move] } }).arm)
    arm.at(0.2)
    return [arm.state.along, arm.state.down, arm.state.side]
  }

  it.each([
    ['none', 'along', [-3, 0, 0]],
    ['none', 'up', [0, 3, 0]],
    ['none', 'across', [0, 0, -3]],
    ['across', 'up', [0, GRAVITY + 3, 0]],
    ['across', 'along', [-3, GRAVITY, 0]],
    ['along', 'up', [GRAVITY + 3, 0, 0]],
    ['along', 'along', [GRAVITY - 3, 0, 0]],
    ['along', 'across', [GRAVITY, 0, -3]],
  ])('gravity %s, move %s', (gravity, axis, pull) => {
    for (const [n, value] of at(gravity, axis).entries()) expect(value).toBeCloseTo(pull[n]!, 9)
  })
})
