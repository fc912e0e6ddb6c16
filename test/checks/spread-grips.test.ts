/** The share of grips that fail against the closed form of strength against stress. */
import { describe, expect, it } from 'vitest'
import { answerOf } from '../../sim/ask/spread/answer.ts'
import { normalShare } from '../../sim/ask/spread/distributions.ts'
import { limitsOf } from '../../sim/ask/spread/rare.ts'
import { runSpread } from '../../sim/ask/spread/run.ts'
import { runRare } from '../../sim/ask/spread/run-rare.ts'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { run } from '../../sim/cli/core.ts'
import { FRICTIONLESS, IDEAL, scenarioOf } from './support.ts'

/** Force of the clamp at one contact [N]: 12 N/A · 2.5 A on two of them. */
const FORCE = 15
const G = 9.80665
const MU = { mean: 0.3, sd: 0.03 }
const MASS = { sd: 0.03 }

/** What holds the part up, 2·µ·F, is normal, and so is its weight. */
const SPREAD = Math.sqrt((2 * FORCE * MU.sd) ** 2 + (G * MASS.sd) ** 2)
const massFor = (beta: number) => (2 * MU.mean * FORCE - beta * SPREAD) / G

/** A current clamp on an axis without friction; the part hangs still from 0.3 s on. */
const clampOf = (mass: number) =>
  scenarioOf(
    IDEAL,
    {
      actuator: { kind: 'direct', motor: { forceConstant: 12, movingMass: 0.2 } },
      jaws: { layout: 'mirrored', opening: 0.074, stroke: 0.05, friction: { static: MU.mean, sliding: 0.2 } },
      part: { stiffness: 5e4, damping: 2, mass },
      approach: { speed: 0.05, overtravel: 0.01 },
      arm: { gravity: 'across', lift: 0.3, moves: [] },
      servo: { kp: 2000, ki: 0, kd: 60 },
      strategies: { currentClamp: { limit: 2.5 } },
      run: { duration: 0.5 },
      spread: {
        varies: [
          { path: 'jaws.friction.static', law: 'normal', sd: MU.sd },
          { path: 'part.mass', law: 'normal', sd: MASS.sd },
        ],
      },
    },
    { actuator: { transmission: FRICTIONLESS } },
  )

// Stress and strength, both normal: Φ(−(µR − µS)/√(σR² + σS²)), closed form; Verma et al. 2016, ch. 8.
describe('a clamp on an axis without friction, friction and mass of the part normal: Φ(−β) fail', () => {
  it('has the force and the margin that the closed form takes', () => {
    const { metrics } = run(clampOf(massFor(2)), 'current-clamp').result
    expect(metrics.settledForce! / FORCE).toBeCloseTo(1, 2)
    expect(metrics.holdMargin! / ((2 * MU.mean * FORCE) / (massFor(2) * G) - 1)).toBeCloseTo(1, 1)
  })

  it.each(['random', 'sobol', 'hypercube'] as const)('of 400 parts, %s: within the interval', async (sampling) => {
    const scenario = clampOf(massFor(1.2))
    const [tally] = await runSpread(
      { scenario, strategies: ['current-clamp'], grips: 400, seed: 1, sampling },
      crewHere(run),
    )
    const { held } = answerOf(scenario, sampling, tally!).shares
    expect(held!.low).toBeLessThanOrEqual(1 - normalShare(-1.2))
    expect(held!.high).toBeGreaterThanOrEqual(1 - normalShare(-1.2))
  })

  it('rarely, β = 3.2, 1 in 1,455: within the interval of the search', async () => {
    const found = await runRare(clampOf(massFor(3.2)), { strategy: 'current-clamp', seed: 1, size: 300 }, crewHere(run))
    if (found.rare.kind !== 'share') throw new Error(found.rare.kind)
    const { low, high } = limitsOf(found.rare.share, found.rare.variation)
    expect(low).toBeLessThanOrEqual(normalShare(-3.2))
    expect(high).toBeGreaterThanOrEqual(normalShare(-3.2))
  })
})
