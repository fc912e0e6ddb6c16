/** What became of the part; `sim/say` puts it into words. */
import type { Plant } from '../plant/plant.ts'
import type { Scenario } from '../scenario/index.ts'
import { tracesHash } from './hash.ts'
import type { GripResult, Verdict } from './result.ts'
import type { Run } from './run.ts'

/** A part that slid less than this counts as held [m]; common practice, no source. */
export const SLIP_LIMIT = 1e-4

/** The worst that happened decides: unstable, crushed, missed, dropped, slipped, marked, else held. */
export function verdictOf(scenario: Scenario, { events, metrics }: Pick<Run, 'events' | 'metrics'>): Verdict {
  if (events.unstable !== null) return 'unstable'
  if (events.crack !== null) return 'crushed'
  if (metrics.contactTime === null || events.lift === null) return 'missed'
  if (events.drop !== null) return 'dropped'
  if ((metrics.slipDistance ?? 0) > SLIP_LIMIT) return 'slipped'
  return (metrics.peakForce ?? 0) > markLimit(scenario) ? 'marked' : 'held'
}

/** Force above which the part carries a mark or a dent [N]. */
export const markLimit = ({ part }: Scenario) => Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)

/** Whether nothing that still comes can make the verdict `held`; `mark` is the part's mark limit [N]. */
export const isLost = (plant: Plant, mark: number) =>
  plant.out || plant.slip.distance > SLIP_LIMIT || plant.peak > mark || !Number.isNaN(plant.crackTime)

export function judge(scenario: Scenario, strategy: GripResult['strategy'], step: number, run: Run): GripResult {
  const { metrics, events, cause } = run
  const verdict = verdictOf(scenario, run)
  return { strategy, verdict, stepError: null, metrics, events, hash: tracesHash(run.traces), cause, step }
}
