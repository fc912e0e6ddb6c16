/** The share of grips that fail against the closed form of strength against stress. */
import { describe, expect, it } from 'vitest'
import { answerOf } from '../../sim/ask/spread/answer.ts'
import { normalShare } from '../../sim/ask/spread/distributions.ts'
import { limitsOf } from '../../sim/ask/spread/rare.ts'
import { runSpread } from '../../sim/ask/spread/run.ts'
import { runRare } from '../../sim/ask/spread/run-rare.ts'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { run } from '../../sim/cli/core.ts'
import { clampFor, FORCE, G, MU } from './strength.ts'

// Stress and strength, both normal: Φ(−(µR − µS)/√(σR² + σS²)), closed form; Verma et al. 2016, ch. 8.
describe('a clamp on an axis without friction, friction and mass of the part normal: Φ(−β) fail', () => {
  it('has the force and the margin that the closed form takes', () => {
    const { metrics } = run(clampFor(2), 'current-clamp').result
    expect(metrics.settledForce! / FORCE).toBeCloseTo(1, 2)
    expect(metrics.holdMargin! / ((2 * MU.mean * FORCE) / (clampFor(2).part.mass * G) - 1)).toBeCloseTo(1, 1)
  })

  it.each(['random', 'sobol', 'hypercube'] as const)('of 400 parts, %s: within the interval', async (sampling) => {
    const scenario = clampFor(1.2)
    const [tally] = await runSpread(
      { scenario, strategies: ['current-clamp'], grips: 400, seed: 1, sampling },
      crewHere(run),
    )
    const { held } = answerOf(scenario, sampling, tally!).shares
    expect(held!.low).toBeLessThanOrEqual(1 - normalShare(-1.2))
    expect(held!.high).toBeGreaterThanOrEqual(1 - normalShare(-1.2))
  })

  it('rarely, β = 3.2, 1 in 1,455: within the interval of the search', async () => {
    const found = await runRare(clampFor(3.2), { strategy: 'current-clamp', seed: 1, size: 300 }, crewHere(run))
    if (found.rare.kind !== 'share') throw new Error(found.rare.kind)
    const { low, high } = limitsOf(found.rare.share, found.rare.variation)
    expect(low).toBeLessThanOrEqual(normalShare(-3.2))
    expect(high).toBeGreaterThanOrEqual(normalShare(-3.2))
  })
})
