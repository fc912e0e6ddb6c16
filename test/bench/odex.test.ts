import { describe, expect, it } from 'vitest'
import { odexGrip } from './odex-axis.ts'
import { fixedStep, forceError, smoothScenario } from './smooth.ts'

describe('the axis integrated by odex', () => {
  const scenario = smoothScenario(0.1)
  const exact = odexGrip(scenario, 1e-9)

  it('is what the fixed step converges to, at first order: half the step, half the error', () => {
    // Bristles that begin to give way leave a remainder of second order, which the finer steps have left behind.
    const errors = [16, 32, 64].map((finer) => forceError(fixedStep(scenario, finer), exact))
    for (const [n, error] of errors.slice(1).entries()) expect(error / errors[n]!).toBeCloseTo(0.5, 2)
    expect(forceError(fixedStep(scenario), exact)).toBeLessThan(1e-4)
  })

  it('touches and presses', () => {
    expect(Math.max(...exact.force)).toBeGreaterThan(40)
    expect(exact.evaluations).toBeGreaterThan(exact.force.length)
  })
})
