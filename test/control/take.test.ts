import { describe, expect, it } from 'vitest'
import type { ForcePid } from '../../sim/control/force-pid.ts'
import type { PositionPid } from '../../sim/control/position-pid.ts'
import type { VelocityPi } from '../../sim/control/velocity-pi.ts'
import { copyState } from '../../sim/run/mirror.ts'
import { currentLoop, forcePid, lowPassOf, positionPid, velocityPi } from './support.ts'

const period = 0.001
const limit = 2
const position = (kp = 30) =>
  positionPid({
    kp,
    ki: 200,
    kd: 1,
    speedFilter: 0.002,
    velocityFeedforward: 0,
    accelerationFeedforward: 0,
    period,
    limit,
  })
const velocity = () => velocityPi({ kp: 3, ki: 50, period, limit })
const force = () => forcePid({ kp: 0.3, ki: 5, kd: 0.001, derivativeFilter: 0.003, period, limit })
const current = () => currentLoop({ kp: 3, ki: 50, period, voltageLimit: limit, backEmf: 0.1 })
const lowPass = () => lowPassOf({ timeConstant: 0.01, period })

describe('A controller that goes on from where another one stands', () => {
  it('has all of its state, saturated or not, and a takeover that is still to come', () => {
    const one = [position(), velocity(), force(), current(), lowPass()] as const
    for (let k = 0; k < 60; k++) {
      const error = 3 * Math.sin(k / 7)
      one[0].tick(error, 0, 0, 0.1 * error)
      one[1].tick(error, 0.2)
      one[2].tick(error, 0.2)
      one[3].tick(error, 0.2, 0.1)
      one[4].tick(error)
      if (k % 20 === 19) for (const each of one.slice(0, 3) as [PositionPid, VelocityPi, ForcePid]) each.preset(0.5)
      const next = [position(), velocity(), force(), current(), lowPass()] as const
      copyState(one[0], next[0])
      copyState(one[1], next[1])
      copyState(one[2], next[2])
      copyState(one[3], next[3])
      copyState(one[4], next[4])
      expect(next).toEqual(one)
    }
  })

  it('holds the same output at rest under another gain', () => {
    const one = position()
    for (let k = 0; k < 20; k++) one.tick(0.01, 0, 0, 0)
    for (let k = 0; k < 20; k++) one.tick(0, 0, 0, 0)
    const next = position(300)
    copyState(one, next)
    expect(one.state.integral).toBeGreaterThan(0)
    expect(next.tick(0, 0, 0, 0)).toBe(one.tick(0, 0, 0, 0))
  })
})
