import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { core } from '../../../sim/cli/core.ts'
import { PRESETS, STRATEGIES, type StrategyId, simulateGrip } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const both = (scenario: Parameters<typeof simulateGrip>[0], strategy: StrategyId) => {
  const whole = simulateGrip(scenario, strategy, { core })
  const cut = simulateGrip(scenario, strategy, { core, untilLost: true })
  return { whole: whole.result, cut: cut.result, rows: [cut.traces.time.at(-1)!, whole.traces.time.at(-1)!] as const }
}

describe('a run that ends when the part is lost', () => {
  it.each<[string, Record<string, unknown>, StrategyId]>([
    ['crushed', { 'part.crackForce': 10 }, 'current-clamp'],
    ['marked', { 'part.markForce': 10 }, 'current-clamp'],
    [
      'slipped',
      { 'part.mass': 3, 'jaws.friction.static': 0.05, 'jaws.friction.sliding': 0.04, 'jaws.padLength': 1 },
      'current-clamp',
    ],
    ['missed', { 'strategies.thresholdStop.threshold': 0.01 }, 'threshold-stop'],
  ])('%s: ends early, and is not held', (verdict, edits, strategy) => {
    const { whole, cut, rows } = both(quick(edits), strategy)
    expect(whole.verdict).toBe(verdict)
    expect(cut.verdict).not.toBe('held')
    expect(rows[0]).toBeLessThan(0.9 * rows[1])
  })

  it.each(PRESETS.map(({ id, scenario }) => [id, scenario] as const))(
    '%s: a held part is run to its end, to the last bit',
    (_, scenario) => {
      for (const { id } of STRATEGIES) {
        const { whole, cut } = both(scenario, id)
        expect(cut.verdict === 'held').toBe(whole.verdict === 'held')
        if (whole.verdict === 'held') expect(cut).toEqual(whole)
      }
    },
  )

  it('is held exactly where the whole run is', () => {
    const log = (low: number, high: number) =>
      fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp)
    fc.assert(
      fc.property(
        fc.constantFrom(...STRATEGIES.map(({ id }) => id)),
        log(0.02, 0.3),
        log(0.1, 6),
        log(0.05, 3),
        log(5, 200),
        log(1000, 1e5),
        (strategy, speed, current, mass, crack, kp) => {
          const scenario = quick({
            'approach.speed': speed,
            'strategies.thresholdStop.threshold': current,
            'strategies.currentClamp.limit': current,
            'strategies.sensedForce.target': 15 * current,
            'part.mass': mass,
            'part.crackForce': crack,
            'part.markForce': 0.8 * crack,
            'servo.kp': kp,
          })
          const { whole, cut } = both(scenario, strategy)
          expect(cut.verdict === 'held').toBe(whole.verdict === 'held')
        },
      ),
      { numRuns: 60, seed: 3 },
    )
  })
})

describe('the weakest force', () => {
  const weakest = (edits: Record<string, unknown>) => simulateGrip(quick(edits), 'current-clamp', { core })

  it('is that of the time in which the part hangs, not of the jaws before or after', () => {
    const { result, weakest: least } = weakest({ 'part.mass': 6, 'run.duration': 0.8 })
    expect(result.verdict).toBe('dropped')
    expect(least!).toBeGreaterThan(0.8 * result.metrics.settledForce!)
    // A settled clamp wanders by a thousandth, with the noise of its current.
    const whole = weakest({})
    expect(Math.abs(whole.weakest! / whole.result.metrics.settledForce! - 1)).toBeLessThan(0.002)
    expect(weakest({ 'approach.speed': 0.002 }).weakest).toBe(null)
  })
})
