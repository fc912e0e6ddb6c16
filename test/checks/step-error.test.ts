/**
 * The step error that a run states against the one that it has: its distance from the same run at a sixteenth of the step. Noise and
 * steps of measurement are off, since they would be drawn anew with every step. The scheme is of first order (closed form), so the
 * stated error is 2·(1 − 1/2)/(1 − 1/16) = 1.07 of that distance; a highest or least of samples wanders by the sample that it falls on,
 * so it may be stated too large by up to 4, and too small by up to 2.5 (own bounds).
 */
import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import {
  judgeGrip,
  type MetricId,
  PRESETS,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  simulateGrip,
} from '../../sim/index.ts'
import { make } from '../scenario/make.ts'

const HEADLINES: MetricId[] = ['peakForce', 'settledForce', 'holdMargin', 'damageMargin', 'slipDistance']
const TOO_SMALL = 2.5
const TOO_LARGE = 4
/** Changes smaller than this share of a figure are rounding and instants of samples. */
const WORTH = 1e-5

const calm = (scenario: Scenario, edits: Record<string, unknown> = {}) =>
  make(scenario, {
    'drive.currentNoise': 0,
    'drive.currentResolution': 0,
    'sensors.gauge.noise': 0,
    'sensors.gauge.resolution': 0,
    'sensors.encoder.resolution': 0,
    ...edits,
  })

/** How many figures were worth comparing. */
function compare(scenario: Scenario, strategy: StrategyId): MetricId[] {
  const { result } = simulateGrip(scenario, strategy, { core, stepError: true })
  const fine = judgeGrip(make(scenario, { 'run.step': result.step / 16 }), strategy, { core }).result
  return HEADLINES.filter((id) => {
    const [value, finer] = [result.metrics[id], fine.metrics[id]]
    if (value === null || finer === null) return false
    const error = Math.abs(value - finer)
    if (error <= WORTH * Math.max(Math.abs(value), id === 'slipDistance' ? 1e-4 : 1)) return false
    expect(result.stepErrors![id]! / error, id).toBeGreaterThan(1 / TOO_SMALL)
    expect(result.stepErrors![id]! / error, id).toBeLessThan(TOO_LARGE)
    return true
  })
}

describe('the stated step error is the true one, at most 4 times too large and 2.5 too small', {
  timeout: 240_000,
}, () => {
  for (const { id, scenario } of PRESETS)
    it(id, () => {
      const strategies = STRATEGIES.map((strategy) => strategy.id)
      const compared = strategies.flatMap((strategy) => compare(calm(scenario, { 'part.crackForce': 1e6 }), strategy))
      expect(compared).toContain('peakForce')
    })

  it('of a part that slides', () => {
    const { scenario } = PRESETS[0]!
    const friction = scenario.jaws.friction.static / 2.7
    const sliding = calm(scenario, {
      'part.crackForce': 1e6,
      'jaws.friction.static': friction,
      'jaws.friction.sliding': 0.95 * friction,
    })
    expect(compare(sliding, 'current-clamp')).toContain('slipDistance')
  })
})

describe('a step that is too coarse', () => {
  /** Light jaws on a stiff part, at a fiftieth of the rate that the stiffest mode asks for. */
  const coarse = make(
    {},
    {
      'part.stiffness': 3e7,
      'part.crackForce': 5000,
      'jaws.padStiffness': 1e8,
      'jaws.mass': 0.02,
      'run.duration': 0.6,
      'run.step': 5e-5,
    },
  )

  it('puts its doubt into the verdict', () => {
    for (const { id } of STRATEGIES) {
      const { doubt } = simulateGrip(coarse, id, { core, stepError: true }).result
      expect(doubt, id).not.toBeNull()
    }
  })

  it('and none is left where the step is chosen', () => {
    for (const { id } of STRATEGIES) {
      const { doubt } = simulateGrip(make(coarse, { 'run.step': null }), id, { core, stepError: true }).result
      expect(doubt, id).toBeNull()
    }
  })
})
