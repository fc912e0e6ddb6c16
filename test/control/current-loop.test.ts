import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { currentLoop } from './support.ts'

const options = { kp: 9, ki: 2500, period: 5e-5, voltageLimit: 24, backEmf: 0.05 }
const value = fc.double({ min: -1e3, max: 1e3, noNaN: true })
const samples = fc.array(fc.tuple(value, value, value), { minLength: 1, maxLength: 50 })

describe('CurrentLoop', () => {
  it('stays within the voltage limit and says on which side it stands', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const loop = currentLoop(options)
        for (const [target, measured, speed] of list) {
          const voltage = loop.tick(target, measured, speed)
          expect(Math.abs(voltage)).toBeLessThanOrEqual(24)
          if (loop.state.saturated !== 0) expect(voltage).toBe(24 * loop.state.saturated)
        }
      }),
    )
  })

  it('answers mirrored input with mirrored output, bit for bit', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const [loop, mirrored] = [currentLoop(options), currentLoop(options)]
        for (const [target, measured, speed] of list) {
          const sum = loop.tick(target, measured, speed) + mirrored.tick(-target, -measured, -speed)
          expect(sum).toBe(0)
          expect(loop.state.saturated + mirrored.state.saturated).toBe(0)
        }
      }),
    )
  })

  it('without error puts out the back-EMF of the speed alone', () => {
    const loop = currentLoop(options)
    expect(loop.tick(3, 3, 100)).toBeCloseTo(5, 12)
    expect(currentLoop({ ...options, backEmf: 0 }).tick(3, 3, 100)).toBe(0)
  })

  it('integrates by the trapezoidal rule', () => {
    const loop = currentLoop({ ...options, voltageLimit: Infinity })
    const errors = [1, -2, 0.5, 4]
    let [sum, previous] = [0, 0]
    for (const error of errors) {
      sum += (options.period * (error + previous)) / 2
      previous = error
      expect(loop.tick(error, 0, 0)).toBeCloseTo(options.kp * error + options.ki * sum, 10)
    }
  })

  it('holds the integral while limited and pushed further, and lets it go back', () => {
    const loop = currentLoop({ ...options, backEmf: 0 })
    loop.state.integral = 20
    loop.tick(10, 0, 0)
    expect(loop.state.saturated).toBe(1)
    expect(loop.state.integral).toBe(20)
    loop.state.integral = 40
    loop.tick(-0.1, 0, 0)
    expect(loop.state.saturated).toBe(1)
    expect(loop.state.integral).toBeLessThan(40)
  })

  it('obeys a voltage limit that changes on the way', () => {
    const loop = currentLoop(options)
    expect(loop.tick(100, 0, 0)).toBe(24)
    loop.voltageLimit = 12
    expect(loop.tick(100, 0, 0)).toBe(12)
  })

  it('shows a number that is none instead of hiding it behind the limit', () => {
    expect(currentLoop(options).tick(1, Number.NaN, 0)).toBeNaN()
  })

  it('forgets everything on reset', () => {
    const [used, fresh] = [currentLoop(options), currentLoop(options)]
    for (let n = 0; n < 10; n++) used.tick(1, 0, 0)
    used.reset()
    expect(used.tick(1, 0.5, 3)).toBe(fresh.tick(1, 0.5, 3))
  })
})
