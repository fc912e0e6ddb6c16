import { describe, expect, it } from 'vitest'
import { positionPid } from './support.ts'

const PERIOD = 1e-3

/** Highest answer of an integrator under the controller to a step of 1 at rest, and when [s]. */
function stepOfIntegrator(kp: number, ki: number, b: number) {
  const pid = positionPid({
    kp,
    ki,
    kd: 0,
    speedFilter: 0,
    velocityFeedforward: 0,
    accelerationFeedforward: 0,
    period: PERIOD,
    limit: Number.POSITIVE_INFINITY,
    weights: { proportional: b, derivative: 0 },
  })
  pid.tick(0, 0, 0, 0)
  let [y, most, when] = [0, 0, 0]
  for (let k = 1; k < 20_000; k++) {
    y += PERIOD * pid.tick(1, 0, 0, y)
    if (y > most) [most, when] = [y, k * PERIOD]
  }
  return { most, when }
}

describe('set-point weight of the proportional part', () => {
  // Åström and Hägglund, Advanced PID Control (2006), on 1/s with K = Ti = 1; b = 0 is exp(−πζ/√(1 − ζ²)) with ζ = ½, the others computed.
  it.each([
    [0, 0.163034, 3.628],
    [0.25, 0.169048, 3.348],
    [0.5, 0.191027, 3.023],
    [1, 0.298436, 2.418],
  ])('b = %d overshoots by %d at %d s', (b, overshoot, at) => {
    const { most, when } = stepOfIntegrator(1, 1, b)
    // A sample and a half of delay in 1 ms: below 0.2 % of the overshoot.
    expect(Math.abs(most - 1 - overshoot)).toBeLessThan(0.002)
    expect(when).toBeCloseTo(at, 1)
  })

  // Closed form: K = 2, Ti = 2 on 1/s is critically damped, and b = ½ is exactly 1 − exp(−t).
  it('does not overshoot where it cancels the zero', () => {
    expect(stepOfIntegrator(2, 1, 0.5).most).toBeLessThan(1.0005)
    expect(stepOfIntegrator(2, 1, 1).most - 1).toBeCloseTo(Math.exp(-2), 2)
  })
})
