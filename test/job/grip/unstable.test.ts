/** Gains a thousand times too high, steps too coarse: a verdict with a time, never a hang or a number that is none. */
import { describe, expect, it } from 'vitest'
import { STRATEGIES, type StrategyId, simulateGrip } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'
import { reasonIn } from '../../say/support.ts'

const run = (id: StrategyId, edits: Record<string, unknown>) => simulateGrip(quick(edits), id)

function expectUnstable(id: StrategyId, edits: Record<string, unknown>) {
  const { result, traces } = run(id, edits)
  expect(result.verdict).toBe('unstable')
  expect(result.events.unstable).toBeGreaterThanOrEqual(0)
  expect(result.events.unstable).toBeLessThan(0.4)
  expect(reasonIn(quick(edits), result)).toMatch(
    /^Leaves its rails at 0\.\d{3,} s: [a-z ]+\.(?: The current peaks| The bus has|$)/,
  )
  expect(traces.time.at(-1)).toBeGreaterThanOrEqual(result.events.unstable!) // the record ends there
  expect(traces.time.at(-1)).toBeLessThan(0.4)
  return result
}

describe('unstable', () => {
  it.each(['threshold-stop', 'current-clamp'] as const)('by a position loop a thousand times too stiff (%s)', (id) => {
    expect(expectUnstable(id, { 'servo.kp': 8e6 }).cause).toBe('position loop')
    expect(expectUnstable(id, { 'servo.kd': 6e4 }).cause).toBe('position loop')
  })

  it.each(STRATEGIES.map(({ id }) => id))('by a current loop beyond its sampling rate (%s)', (id) => {
    expect(expectUnstable(id, { 'drive.currentBandwidth': 1e6 }).cause).toBe('current loop')
  })

  it('by a velocity loop a thousand times too stiff', () => {
    expectUnstable('sensed-force', { 'strategies.sensedForce.velocity.kp': 8e4 })
  })

  it('by a step too coarse for the plant', () => {
    const coarse = { 'run.step': 5e-5, 'actuator.transmission.stiffness': 1e10, 'jaws.mass': 0.001 }
    expect(['numbers', 'travel', 'current loop']).toContain(expectUnstable('current-clamp', coarse).cause)
  })

  it('is none of the defaults and of gains a few times higher', () => {
    for (const { id } of STRATEGIES)
      for (const edits of [{}, { 'servo.kp': 16_000, 'servo.kd': 90 }, { 'drive.currentBandwidth': 8000 }])
        expect(run(id, edits).result.events.unstable).toBeNull()
  })
})
