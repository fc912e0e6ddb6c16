import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { forcePid } from './support.ts'

const options = { kp: 1e-3, ki: 0.02, kd: 2e-5, derivativeFilter: 2e-3, period: 1e-3, limit: 0.05 }
const value = fc.double({ min: -100, max: 100, noNaN: true })
const samples = fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 40 })

describe('ForcePid', () => {
  it('stays within the limit and answers mirrored input with mirrored output', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const [pid, mirrored] = [forcePid(options), forcePid(options)]
        for (const [target, measured] of list) {
          const speed = pid.tick(target, measured)
          expect(Math.abs(speed)).toBeLessThanOrEqual(0.05)
          if (pid.state.saturated !== 0) expect(speed).toBe(0.05 * pid.state.saturated)
          expect(mirrored.tick(-target, -measured) + speed).toBe(0)
        }
      }),
    )
  })

  it('gives no kick of the derivative when the target steps', () => {
    const unlimited = { ...options, limit: Infinity }
    const [pid, proportional] = [forcePid(unlimited), forcePid({ ...unlimited, kd: 0 })]
    for (let n = 0; n < 5; n++) {
      const target = n < 2 ? 0 : 10
      expect(pid.tick(target, 1)).toBe(proportional.tick(target, 1))
    }
  })

  it('brakes by kd times the slope of a force that rises steadily', () => {
    const pid = forcePid({ ...options, kp: 0, ki: 0, limit: Infinity })
    let speed = 0
    for (let n = 0; n < 200; n++) speed = pid.tick(0, n * options.period * 500)
    expect(speed).toBeCloseTo(-500 * options.kd, 12)
  })

  /*
   * A stiff axis that runs at the speed asked for, against a part of stiffness k: F = k x. With P alone the loop is
   * 1/(1 + s/(k kp)), so the force comes within 1/e of its target after 1/(k kp).
   */
  it('brings the force of an elastic part to its target with the time constant 1/(k kp)', () => {
    const [stiffness, period] = [20_000, 1e-5]
    const pid = forcePid({ ...options, ki: 0, kd: 0, period, limit: Infinity })
    let force = 0
    for (let n = 0; n < 5000; n++) force += stiffness * period * pid.tick(15, force)
    expect(force).toBeCloseTo(15 * (1 - Math.exp(-1)), 2)
  })

  it('gives no spike where the gauge already reads a force, nor after a reset', () => {
    const pid = forcePid({ ...options, kp: 0, ki: 0, limit: Infinity })
    expect(pid.tick(0, 40)).toBeCloseTo(0, 12)
    pid.reset()
    expect(pid.tick(0, -40)).toBeCloseTo(0, 12)
  })

  it('takes over without a bump', () => {
    const pid = forcePid({ ...options, kd: 0 })
    for (let n = 0; n < 20; n++) pid.tick(10, n)
    pid.preset(0.02)
    expect(pid.tick(12, 25)).toBeCloseTo(0.02, 12)
    expect(pid.tick(12, 25)).toBeCloseTo(0.02 - options.ki * options.period * 13, 12)
    pid.preset(0.04)
    pid.reset()
    expect(pid.tick(0, 0)).toBe(0)
  })
})
