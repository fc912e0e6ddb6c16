import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import { PRESETS, STRATEGIES, simulateGrip } from '../../sim/index.ts'

describe('half the step changes the peak and the settled force by less than 1 % (own bound)', () => {
  for (const { id, scenario } of PRESETS)
    it.each(STRATEGIES.map((strategy) => strategy.id))(`${id}, %s`, (strategy) => {
      const { result } = simulateGrip(scenario, strategy, { core, stepError: true })
      expect(result.verdict).not.toBe('unstable')
      expect(result.stepError).not.toBeNull()
      expect(result.stepError!).toBeLessThan(0.01)
    })
})
