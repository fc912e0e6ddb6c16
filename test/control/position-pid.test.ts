import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PositionPidOptions, positionPid } from './support.ts'

const options: PositionPidOptions = {
  kp: 3000,
  ki: 20_000,
  kd: 12,
  speedFilter: 1e-3,
  velocityFeedforward: 2,
  accelerationFeedforward: 0.1,
  period: 5e-4,
  limit: 4,
}
const bare = { speedFilter: 0, velocityFeedforward: 0, accelerationFeedforward: 0 }
const value = fc.double({ min: -1, max: 1, noNaN: true })
const sample = fc.tuple(value, value, value, value)
const samples = fc.array(sample, { minLength: 1, maxLength: 40 })

describe('PositionPid', () => {
  it('stays within the limit and says on which side it stands', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const pid = positionPid(options)
        for (const [position, speed, acceleration, measured] of list) {
          const current = pid.tick(position, speed, acceleration, measured)
          expect(Math.abs(current)).toBeLessThanOrEqual(4)
          if (pid.state.saturated !== 0) expect(current).toBe(4 * pid.state.saturated)
        }
      }),
    )
  })

  it('answers mirrored input with mirrored output, bit for bit', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const [pid, mirrored] = [positionPid(options), positionPid(options)]
        for (const [position, speed, acceleration, measured] of list)
          expect(
            pid.tick(position, speed, acceleration, measured) +
              mirrored.tick(-position, -speed, -acceleration, -measured),
          ).toBe(0)
      }),
    )
  })

  it('never moves the integral further into the limit', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const pid = positionPid(options)
        for (const [position, speed, acceleration, measured] of list) {
          const before = pid.state.integral
          pid.tick(position, speed, acceleration, measured)
          if (pid.state.saturated !== 0)
            expect((pid.state.integral - before) * pid.state.saturated).toBeLessThanOrEqual(0)
        }
      }),
    )
  })

  it('is, unlimited, the sum of its parts: kp e, ki trapezoidal ∫e, kd on the filtered speed, feed-forward', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const pid = positionPid({ ...options, limit: Infinity })
        let [integral, previousError, previousMeasured, filtered] = [0, 0, list[0]![3], 0]
        for (const [position, speed, acceleration, measured] of list) {
          const error = position - measured
          integral += (options.period * (error + previousError)) / 2
          filtered += ((measured - previousMeasured) / options.period - filtered) * (0.0005 / 0.0015)
          ;[previousError, previousMeasured] = [error, measured]
          const expected = 3000 * error + 20_000 * integral + 12 * (speed - filtered) + 2 * speed + 0.1 * acceleration
          expect(Math.abs(pid.tick(position, speed, acceleration, measured) - expected)).toBeLessThan(1e-6)
          expect(Math.abs(pid.measuredSpeed() - filtered)).toBeLessThan(1e-6)
        }
      }),
    )
  })

  it('starts without a spike of speed where the axis does not stand at 0', () => {
    const pid = positionPid(options)
    expect(pid.tick(0.04, 0, 0, 0.04)).toBe(0)
    expect(pid.measuredSpeed()).toBe(0)
  })

  /*
   * PID on a mass with a triple pole: kp = 3 m ω², ki = m ω³, kd = 3 m ω. With the derivative on the error the step overshoots by
   * 20.6005 % at (3 − √3)/ω (closed form of (3ωs² + 3ω²s + ω³)/(s + ω)³). Here the derivative sees the measurement only,
   * and the kick that it would have given at the step is put in as the initial speed 3ω.
   */
  it('on a mass with a triple pole at −ω overshoots by 20.6005 % at (3 − √3)/ω', () => {
    const [mass, omega, period] = [0.4, 50, 1e-6]
    const kp = 3 * mass * omega ** 2
    const pid = positionPid({
      ...bare,
      kp,
      ki: mass * omega ** 3,
      kd: 3 * mass * omega,
      period,
      limit: Infinity,
    })
    let [position, speed, peak, peakTime] = [0, 3 * omega, 0, 0]
    for (let n = 0; n < 60_000; n++) {
      const force = pid.tick(1, 0, 0, position)
      position += period * (speed + (period * force) / mass / 2)
      speed += (period * force) / mass
      if (position > peak) [peak, peakTime] = [position, (n + 1) * period]
    }
    expect(Math.abs((peak - 1) * 100 - 20.6005)).toBeLessThan(0.02)
    expect(Math.abs(peakTime - (3 - Math.sqrt(3)) / omega)).toBeLessThan(1e-5)
  })

  it('with exact feed-forward leaves an ideal mass with friction no error on a parabola', () => {
    const [mass, viscous, acceleration, period] = [0.5, 3, 2, 1e-4]
    const pid = positionPid({
      ...options,
      speedFilter: 0,
      period,
      limit: Infinity,
      velocityFeedforward: viscous,
      accelerationFeedforward: mass,
      kd: 0,
      ki: 0,
    })
    let [position, speed] = [0, 0]
    for (let n = 0; n < 2000; n++) {
      const t = n * period
      const force = pid.tick((acceleration * t * t) / 2, acceleration * t, acceleration, position)
      position += period * (speed + (period * (force - viscous * speed)) / mass / 2)
      speed += (period * (force - viscous * speed)) / mass
    }
    expect(Math.abs(position - (acceleration * 0.2 ** 2) / 2)).toBeLessThan(1e-6)
  })

  it('takes over without a bump: after preset the next output is that current, from wherever it comes', () => {
    fc.assert(
      fc.property(samples, sample, fc.double({ min: -4, max: 4, noNaN: true }), (list, next, current) => {
        const pid = positionPid(options)
        for (const [position, speed, acceleration, measured] of list) pid.tick(position, speed, acceleration, measured)
        pid.preset(current)
        expect(Math.abs(pid.tick(...next) - current)).toBeLessThan(1e-9)
      }),
    )
  })

  it('goes on integrating after a takeover', () => {
    const pid = positionPid(options)
    pid.preset(1)
    pid.tick(1e-4, 0, 0, 0)
    const before = pid.tick(1e-4, 0, 0, 0)
    expect(before).toBeCloseTo(1 + options.ki * options.period * 1e-4, 9)
  })

  it('presses with a limit lowered on the way', () => {
    const pid = positionPid(options)
    expect(pid.tick(1, 0, 0, 0)).toBe(4)
    pid.limit = 1.5
    expect(pid.tick(1, 0, 0, 0)).toBe(1.5)
  })

  it('forgets everything on reset', () => {
    const [used, fresh] = [positionPid(options), positionPid(options)]
    for (let n = 0; n < 10; n++) used.tick(1e-3, 0, 0, n * 1e-5)
    used.preset(2)
    used.reset()
    expect(used.tick(1e-3, 0.1, 0, 5e-4)).toBe(fresh.tick(1e-3, 0.1, 0, 5e-4))
  })

  it('holds a spring at its set point without steady error, at the current that statics gives', () => {
    const [stiffness, target, period] = [2000, 1e-3, 1e-4]
    const pid = positionPid({ ...options, ...bare, period, limit: 10 })
    let [position, speed, current] = [0, 0, 0]
    for (let n = 0; n < 40_000; n++) {
      current = pid.tick(target, 0, 0, position)
      speed += (period * (current - stiffness * position - 20 * speed)) / 0.5
      position += period * speed
    }
    expect(position).toBeCloseTo(target, 9)
    expect(current).toBeCloseTo(stiffness * target, 6)
  })
})
