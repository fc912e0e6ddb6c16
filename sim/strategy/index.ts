/** The registry of grip strategies: a new one is one file and one line here. */

import type { Job } from '../job/job.ts'
import { currentClamp } from './current-clamp/index.ts'
import { sensedForce } from './sensed-force/index.ts'
import type { StrategyId, StrategyKind } from './strategy.ts'
import { thresholdStop } from './threshold-stop/index.ts'

export const STRATEGIES: StrategyKind[] = [thresholdStop, currentClamp, sensedForce]

/** Those that make sense on a job. */
export const strategiesOn = ({ refuses }: Pick<Job, 'refuses'>): StrategyKind[] =>
  STRATEGIES.filter(({ id }) => !refuses?.includes(id))

/** Throws a RangeError for an id that is not in the registry. */
export function strategyOf(id: StrategyId): StrategyKind {
  const kind = STRATEGIES.find((strategy) => strategy.id === id)
  if (!kind) throw new RangeError(`unknown strategy "${id}", known are ${STRATEGIES.map((s) => s.id).join(', ')}`)
  return kind
}
