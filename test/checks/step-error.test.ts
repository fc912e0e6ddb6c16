/**
 * The step error that a run states against the one that it has: its distance from the same run at a sixteenth of the step. Noise and
 * steps of measurement are off at first, as they go another way at another step though they are drawn the same. The scheme is of first order (closed form), so the
 * stated error is 2·(1 − 1/2)/(1 − 1/16) = 1.07 of that distance; a highest or least of samples wanders by the sample that it falls on,
 * so it may be stated too large by up to 4, and too small by up to 2.5 (own bounds).
 */
import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import {
  type GripResult,
  judgeGrip,
  type MetricId,
  PRESETS,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  simulateGrip,
  stepCheck,
  uncheckable,
} from '../../sim/index.ts'
import { reasonIn } from '../say/support.ts'
import { make } from '../scenario/make.ts'

const HEADLINES: MetricId[] = ['peakForce', 'settledForce', 'holdMargin', 'damageMargin', 'slipDistance']
const TOO_SMALL = 2.5
const TOO_LARGE = 4
/** Changes smaller than this share of a figure are rounding and instants of samples. */
const WORTH = 1e-5

/** Change of a figure that is [its unit]. */
const worth = (id: MetricId, value: number) => WORTH * Math.max(Math.abs(value), id === 'slipDistance' ? 1e-4 : 1)

const calm = (scenario: Scenario, edits: Record<string, unknown> = {}) =>
  make(scenario, {
    'drive.currentNoise': 0,
    'drive.currentResolution': 0,
    'sensors.gauge.noise': 0,
    'sensors.gauge.resolution': 0,
    'sensors.encoder.resolution': 0,
    ...edits,
  })

/** Stated over true error of each figure where that is worth comparing. */
function ratiosOf(scenario: Scenario, strategy: StrategyId): number[] {
  const whole = make(scenario, { 'part.crackForce': 1e6 })
  const { result } = simulateGrip(whole, strategy, { core, stepError: true })
  const fine = judgeGrip(make(whole, { 'run.step': result.step / 16 }), strategy, { core }).result
  return HEADLINES.flatMap((id) => {
    const [value, finer] = [result.metrics[id], fine.metrics[id]]
    if (value === null || finer === null || Math.abs(value - finer) <= worth(id, value)) return []
    return [result.stepErrors![id]! / Math.abs(value - finer)]
  })
}

/** How many figures were worth comparing. */
function compare(scenario: Scenario, strategy: StrategyId): MetricId[] {
  const { result } = simulateGrip(scenario, strategy, { core, stepError: true })
  const fine = judgeGrip(make(scenario, { 'run.step': result.step / 16 }), strategy, { core }).result
  return HEADLINES.filter((id) => {
    const [value, finer] = [result.metrics[id], fine.metrics[id]]
    if (value === null || finer === null) return false
    const error = Math.abs(value - finer)
    if (error <= worth(id, value)) return false
    expect(result.stepErrors![id]! / error, id).toBeGreaterThan(1 / TOO_SMALL)
    expect(result.stepErrors![id]! / error, id).toBeLessThan(TOO_LARGE)
    return true
  })
}

describe('the stated step error is the true one, at most 4 times too large and 2.5 too small', () => {
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

/** With noise a stated error is its size: at least a tenth of the true one, and as often too large as too small (own bounds). */
describe('with noise and steps of measurement', () => {
  const ratios = PRESETS.flatMap(({ scenario }) =>
    STRATEGIES.flatMap(({ id }) => [1, 2].flatMap((seed) => ratiosOf(make(scenario, { 'run.seed': seed }), id))),
  )

  it('the stated error is the size of the true one', () => {
    expect(ratios.length).toBeGreaterThan(80)
    expect(Math.min(...ratios)).toBeGreaterThan(0.1)
    const middle = [...ratios].sort((a, b) => a - b)[Math.floor(ratios.length / 2)]!
    expect(middle).toBeGreaterThan(1 / 3)
    expect(middle).toBeLessThan(3)
  })

  it('says which figures chance decides: some, and none where all is calm', () => {
    const { scenario } = PRESETS[0]!
    const scattered = (edits: Scenario) =>
      simulateGrip(edits, 'current-clamp', { core, stepError: true }).result.scattered
    expect(scattered(scenario)).toContain('holdMargin')
    expect(scattered(calm(scenario))).toEqual([])
  })
})

describe('held against runs that end otherwise', () => {
  const { scenario } = PRESETS[0]!
  const { result } = simulateGrip(scenario, 'current-clamp', { core })
  const finer = (part: number, change: Partial<GripResult>) => ({ ...result, step: result.step / part, ...change })
  const untouched = { ...result.metrics, peakForce: null, settledForce: null }

  it('a force that is not there by a finer step is off by twice itself', () => {
    const check = stepCheck(scenario, result, [finer(2, {}), finer(3, { verdict: 'missed', metrics: untouched })])
    expect(check).toMatchObject({ stepError: 2, doubt: { ground: 'verdict', verdict: 'missed' } })
    const metrics = { ...result.metrics, peakForce: null }
    expect(stepCheck(scenario, result, [finer(2, { metrics })]).stepError).toBe(2)
  })

  it('a run that leaves its rails by a finer step has no error, and is in doubt for that', () => {
    const left = finer(3, { verdict: 'unstable', events: { ...result.events, unstable: 0.1 } })
    const check = stepCheck(scenario, result, [finer(2, { verdict: 'missed', metrics: untouched }), left])
    expect(check).toMatchObject({ stepError: null, stepErrors: {}, doubt: { verdict: 'unstable', step: left.step } })
  })
})

describe('where a finer step takes too many steps', () => {
  /** Light jaws on a damper that asks for steps of 10⁻⁹ s, with a step that lets them leave their rails. */
  const stiff = make(
    {},
    { 'actuator.transmission.damping': 1e5, 'jaws.mass': 0.001, 'run.duration': 0.6, 'run.step': 5e-5 },
  )

  it('a run that left its rails stands, in doubt for ever', () => {
    const { result } = simulateGrip(stiff, 'current-clamp', { core, stepError: true })
    expect(result).toMatchObject({ verdict: 'unstable', stepError: null, stepErrors: {}, doubt: { ground: 'untold' } })
    expect(reasonIn(stiff, result)).toMatch(
      /^In doubt: whether the step of 50 µs is what makes it leave its rails cannot/,
    )
    expect(result.doubt).toEqual(uncheckable(result).doubt) // as the page says it
    expect(() => simulateGrip(make(stiff, { 'run.step': null }), 'current-clamp', { core })).toThrow(/^run\.duration:/)
  })

  it('and one that did not has no step error', () => {
    const { result } = simulateGrip(PRESETS[0]!.scenario, 'current-clamp', { core })
    expect(uncheckable(result)).toEqual({ stepError: null, stepErrors: {}, scattered: [], doubt: null })
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
