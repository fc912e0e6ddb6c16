/**
 * The compiled core, for tests of what is made of a grip: it is the same to the last bit as the simulator's own files
 * (`test/run/same-bits.test.ts`) and quicker. What it has run of late it remembers, as tests of one thing ask for the same grips again.
 */
import type { Runner } from '../../sim/ask/runner.ts'
import { run } from '../../sim/cli/core.ts'
import { explain, type Scenario, type StrategyId, type Why } from '../../sim/index.ts'

/** Grips remembered, some with traces of a third of a megabyte. */
const MOST = 120

const kept = new Map<string, unknown>()

export const remembered = ((scenario: Scenario, strategy: StrategyId, wish: { traces: true }) => {
  const key = JSON.stringify([scenario, strategy, wish])
  const known = kept.get(key) ?? run(scenario, strategy, wish)
  kept.delete(key)
  kept.set(key, known)
  if (kept.size > MOST) kept.delete(kept.keys().next().value!)
  return known
}) as Runner

const told = new Map<string, Why>()

/** Why the force of a grip became what it was; worked out once for all tests that ask, as each takes a hundred grips and more. */
export function explained(scenario: Scenario, strategy: StrategyId): Why {
  const key = JSON.stringify([scenario, strategy])
  const why = told.get(key) ?? explain(scenario, strategy, run(scenario, strategy).result.verdict, run)
  told.set(key, why)
  return structuredClone(why)
}
