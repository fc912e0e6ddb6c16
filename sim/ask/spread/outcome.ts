/** What a study keeps of one grip. */
import { type GripResult, METRIC_IDS, VERDICTS } from '../../job/grip/result.ts'
import { RATINGS } from '../../job/ratings.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { Runner } from '../runner.ts'
import type { Part } from './draw.ts'

/** What may become of a part; `refused`: its values break a rule of the format or would take too long, so nobody knows. */
export const FATES = [...VERDICTS, 'refused'] as const
export type Fate = (typeof FATES)[number]

/** What a grip may fail beside the verdict: a requirement on a figure, or a rating of motor or drive. */
export const DEMANDS = [...METRIC_IDS, ...RATINGS.map((rating) => `rating.${rating}` as const)]
export type Demand = (typeof DEMANDS)[number]

export interface Outcome {
  fate: Fate
  failed: Demand[]
  /** In the order of METRIC_IDS [SI]; NaN where there is none. */
  figures: number[]
  /** How far the grip is from its nearest failure, as a share of what it must stand: below 0 it fails. */
  spare: number
}

/** Runs one part's grip; `untilLost`: no further than it is lost, where nothing but whether it is fit is asked. */
export function outcomeOf(
  part: Pick<Part, 'scenario' | 'faults'>,
  strategy: StrategyId,
  run: Runner,
  untilLost = false,
): Outcome {
  if (part.faults.length > 0) return REFUSED
  try {
    const { result } = run(part.scenario, strategy, { untilLost })
    return {
      fate: result.verdict,
      failed: failedOf(result),
      figures: METRIC_IDS.map((id) => result.metrics[id] ?? Number.NaN),
      spare: spareOf(result),
    }
  } catch (error) {
    if (error instanceof RangeError) return REFUSED
    throw error
  }
}

const REFUSED: Outcome = {
  fate: 'refused',
  failed: [],
  figures: METRIC_IDS.map(() => Number.NaN),
  spare: Number.NaN,
}

/** Held, every requirement met and every rating kept. */
export const isFit = ({ fate, failed }: Pick<Outcome, 'fate' | 'failed'>) => fate === 'held' && failed.length === 0

function failedOf({ requirements, overloads }: GripResult): Demand[] {
  const failed = new Set<string>([
    ...requirements.filter(({ met }) => !met).map(({ figure }) => figure),
    ...overloads.map(({ rating }) => `rating.${rating}` as const),
  ])
  return DEMANDS.filter((id) => failed.has(id))
}

/** A grip that is lost without a margin that says by how much counts as having lost all. */
const ALL = -1
/** What nothing limits has this much to spare: finite, so that a file can hold it. */
const MOST = 1e9

function spareOf({ verdict, metrics, requirements, overloads }: GripResult): number {
  const margins = [metrics.holdMargin, metrics.damageMargin].filter((margin) => margin !== null)
  const asked = requirements.map(({ bound, limit, value }) => {
    if (value === null) return ALL
    return (bound === 'least' ? value - limit : limit - value) / (Math.abs(limit) || 1)
  })
  const rated = overloads.map(({ over, limit }) => -over / (Math.abs(limit) || 1))
  const least = Math.max(ALL, Math.min(MOST, ...margins, ...asked, ...rated))
  return verdict === 'held' || least < 0 ? least : ALL
}
