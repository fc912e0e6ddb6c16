import fc from 'fast-check'
import { EVD, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { velocityPi } from './support.ts'

const options = { kp: 12, ki: 400, period: 5e-4, limit: 3 }
const value = fc.double({ min: -1, max: 1, noNaN: true })
const samples = fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 40 })

describe('VelocityPi', () => {
  it('stays within the limit and answers mirrored input with mirrored output', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const [pi, mirrored] = [velocityPi(options), velocityPi(options)]
        for (const [target, measured] of list) {
          const current = pi.tick(target, measured)
          expect(Math.abs(current)).toBeLessThanOrEqual(3)
          if (pi.state.saturated !== 0) expect(current).toBe(3 * pi.state.saturated)
          expect(mirrored.tick(-target, -measured) + current).toBe(0)
        }
      }),
    )
  })

  /*
   * On a mass m, kp = 2 m ω and ki = m ω² give the double pole (s + ω)². The sampled poles come from stepping the block once from
   * each unit state; for a short period they lie at exp(−ω period).
   */
  it('puts a mass on the double pole that its gains ask for', () => {
    const [mass, omega, period] = [0.5, 40, 1e-5]
    const columns = [0, 1].map((state) => {
      const pi = velocityPi({ kp: 2 * mass * omega, ki: mass * omega ** 2, period, limit: Infinity })
      const speed = state === 0 ? 1 : 0
      pi.state.integral = state === 1 ? 1 : 0
      return [speed + (period / mass) * pi.tick(0, speed), pi.state.integral]
    })
    const { realEigenvalues, imaginaryEigenvalues } = new EVD(new Matrix(columns).transpose())
    const mean = (realEigenvalues[0]! + realEigenvalues[1]!) / 2
    expect(Math.abs(mean - Math.exp(-omega * period))).toBeLessThan((omega * period) ** 2)
    for (const imaginary of imaginaryEigenvalues) expect(Math.abs(imaginary)).toBeLessThan((omega * period) ** 1.5)
  })

  it('takes over without a bump', () => {
    const pi = velocityPi(options)
    for (let n = 0; n < 20; n++) pi.tick(0.1, 0.05)
    pi.preset(-1.25)
    expect(pi.tick(0.03, -0.02)).toBeCloseTo(-1.25, 12)
    expect(pi.tick(0.03, -0.02)).toBeCloseTo(-1.25 + options.ki * options.period * 0.05, 12)
    pi.preset(2)
    pi.reset()
    expect(pi.tick(0, 0)).toBe(0)
  })
})
