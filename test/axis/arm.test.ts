import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../sim/axis/arm.ts'
import { accelerationOf, armOf } from '../../sim/axis/fill-arm.ts'
import type { ArmMove } from '../../sim/index.ts'
import { liftTime } from '../../sim/scenario/lift.ts'
import { make } from '../scenario/make.ts'

const move: ArmMove = { start: 0.5, axis: 'across', acceleration: 5, duration: 0.4, jerk: 200 }
const scenarioOf = (arm: object, run: object = {}) => make({ arm, run })
const anyMove = fc.record({
  start: fc.double({ min: 0, max: 1, noNaN: true }),
  axis: fc.constant('up' as const),
  acceleration: fc.double({ min: -50, max: 50, noNaN: true }),
  duration: fc.double({ min: 0.05, max: 2, noNaN: true }),
  jerk: fc.double({ min: 1, max: 1e4, noNaN: true }),
})

describe('accelerationOf', () => {
  it('speeds up for half of the time and slows down for the other half, in trapezoids', () => {
    const at = (share: number) => accelerationOf(move, 0.5 + share * 0.4)
    expect(at(0.25)).toBe(5)
    expect(at(0.75)).toBe(-5)
    expect(accelerationOf(move, 0.5 + 0.01)).toBeCloseTo(2, 9)
    for (const t of [0, 0.5, 0.9, 0.91, 7]) expect(accelerationOf(move, t)).toBeCloseTo(0, 12)
  })

  it('peaks below the wanted acceleration where the jerk leaves no time for it', () => {
    const short = { ...move, jerk: 30 }
    let peak = 0
    for (let n = 0; n <= 4000; n++) peak = Math.max(peak, accelerationOf(short, 0.5 + n * 1e-4))
    expect(peak).toBeCloseTo((30 * 0.2) / 2, 9)
  })

  it('ends at rest, keeps to acceleration and jerk, and is mirrored by its sign', () => {
    fc.assert(
      fc.property(anyMove, (any) => {
        const steps = 400
        const h = any.duration / steps
        let [speed, before] = [0, 0]
        for (let n = 0; n < steps; n++) {
          const t = any.start + (n + 0.5) * h
          const a = accelerationOf(any, t)
          expect(Math.abs(a)).toBeLessThanOrEqual(Math.abs(any.acceleration))
          expect(Math.abs(a - before)).toBeLessThanOrEqual(any.jerk * h * (1 + 1e-6) + 1e-9)
          expect(accelerationOf({ ...any, acceleration: -any.acceleration }, t) + a).toBeCloseTo(0, 12)
          speed += a * h
          before = a
        }
        expect(Math.abs(speed)).toBeLessThan(1e-6 * (1 + Math.abs(any.acceleration) * any.duration))
      }),
      { numRuns: 30 },
    )
  })
})

describe('Arm', () => {
  const at = (gravity: string, axis: string, t = 0.6) => {
    const arm = armOf(scenarioOf({ gravity, moves: [{ ...move, axis }] }).arm)
    arm.at(t)
    return { ...arm.state }
  }

  it('carries gravity and every direction into the frame of the gripper', () => {
    expect(at('across', 'up')).toEqual({ along: -0, down: GRAVITY + 5, side: -0, moving: 1 })
    expect(at('across', 'across')).toEqual({ along: -0, down: GRAVITY, side: -5, moving: 1 })
    expect(at('across', 'along')).toEqual({ along: -5, down: GRAVITY, side: -0, moving: 1 })
    expect(at('along', 'up')).toEqual({ along: GRAVITY + 5, down: 0, side: -0, moving: 1 })
    expect(at('along', 'along')).toEqual({ along: GRAVITY - 5, down: 0, side: -0, moving: 1 })
    expect(at('none', 'up')).toEqual({ along: -0, down: 5, side: -0, moving: 1 })
  })

  it('rests before, between and after its moves', () => {
    expect(at('none', 'up', 0.4)).toEqual({ along: -0, down: 0, side: -0, moving: 0 })
    expect(at('none', 'up', 0.95)).toEqual({ along: -0, down: 0, side: -0, moving: 0 })
  })

  it('adds moves that overlap', () => {
    const arm = armOf(
      scenarioOf({ gravity: 'none', moves: [move, { ...move, acceleration: 3 }, { ...move, axis: 'up' }] }).arm,
    )
    arm.at(0.6)
    expect(arm.state.side).toBe(-8)
    expect(arm.state.down).toBe(5)
  })
})

describe('liftTime', () => {
  it('is the given one, else the first move, else two thirds of the run', () => {
    const moves = [{ ...move, start: 0.9 }, move]
    expect(liftTime(scenarioOf({ lift: 0.3, moves }))).toBe(0.3)
    expect(liftTime(scenarioOf({ moves }))).toBe(0.5)
    expect(liftTime(scenarioOf({}, { duration: 1.2 }))).toBeCloseTo(0.8, 12)
  })
})
