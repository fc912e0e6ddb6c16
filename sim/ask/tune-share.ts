/** The share of parts that a set of gains holds over the spread of the file, as far as it can still be the best. */
import type { Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import type { AnyRunner } from './runner.ts'
import { drawing } from './spread/draw.ts'
import { isFit, outcomeOf } from './spread/outcome.ts'

/** The parts of one search, common to all gains that it tries. */
export interface HeldParts {
  strategy: StrategyId
  run: AnyRunner
  /** Indices of the parts, those that were lost last before the others: they show soonest that gains are not the best. */
  order: number[]
  /** Parts lost by the best gains so far. */
  fewest: number
}

/** Null: more are lost than by the best before. Throws a Refusal where the correlations of the scenario contradict each other. */
export function heldShare(scenario: Scenario, parts: HeldParts): number | null {
  const draw = drawing(scenario, { sampling: 'sobol', seed: 1 })
  const lost: number[] = []
  for (const index of parts.order) {
    if (isFit(scenario.job, outcomeOf(draw(index), parts.strategy, parts.run, true))) continue
    lost.push(index)
    if (lost.length > parts.fewest) break
  }
  const [of, over] = [parts.order.length, lost.length > parts.fewest]
  parts.order = [...lost, ...parts.order.filter((index) => !lost.includes(index))]
  if (over) return null
  parts.fewest = lost.length
  return 1 - lost.length / of
}
