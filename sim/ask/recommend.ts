/**
 * Which strategy the figures of one simulated part speak for: of those that hold it undamaged, within all ratings, as required and
 * without doubt, the one that stays farthest from both edges of the force window. A rule of this program, no standard; cost, cycle time and wear are not in it.
 */
import type { GripResult, Verdict } from '../job/grip/result.ts'
import type { StrategyId } from '../strategy/strategy.ts'

export type Weighed = Pick<GripResult, 'strategy' | 'verdict' | 'metrics' | 'overloads' | 'requirements' | 'doubt'>

export interface Standing {
  strategy: StrategyId
  verdict: Verdict
  holdMargin: number | null
  damageMargin: number | null
  /** From first touch to force [s]; null: it never came to it. */
  gripTime: number | null
  /** A rating of motor or drive is exceeded; the verdict cannot be relied on. */
  overloaded: boolean
  doubtful: boolean
  /** A requirement is not met. */
  short: boolean
  /** The smaller of the two margins; what has no limit is no margin. Null: it may not be recommended. */
  spare: number | null
}

export interface Recommendation {
  /** Null where no strategy may be recommended. */
  best: Standing | null
  /** The rest that may be, the wider distance first. */
  next: Standing[]
  /** Those that may not. */
  out: Standing[]
}

/** Distances nearer to each other than this are one distance: the shorter grip decides. */
const ALIKE = 0.005

export function recommend(results: Weighed[]): Recommendation {
  const standings = results.map(standingOf)
  const fit = standings.filter(({ spare }) => spare !== null).sort((a, b) => b.spare! - a.spare!)
  const close = fit.filter(({ spare }) => spare! > fit[0]!.spare! - ALIKE)
  const timed = close.filter(({ gripTime }) => gripTime !== null).sort((a, b) => a.gripTime! - b.gripTime!)
  const best = timed[0] ?? close[0] ?? null
  return {
    best,
    next: fit.filter((standing) => standing !== best),
    out: standings.filter(({ spare }) => spare === null),
  }
}

function standingOf({ strategy, verdict, metrics, overloads, requirements, doubt }: Weighed): Standing {
  const { holdMargin, damageMargin, gripTime } = metrics
  const overloaded = overloads.length > 0
  const doubtful = doubt !== null
  const short = requirements.some(({ met }) => !met)
  const least = Math.min(holdMargin ?? Number.POSITIVE_INFINITY, damageMargin ?? Number.POSITIVE_INFINITY)
  const fit = verdict === 'held' && !overloaded && !doubtful && !short && holdMargin !== null && least >= 0
  return {
    strategy,
    verdict,
    holdMargin,
    damageMargin,
    gripTime,
    overloaded,
    doubtful,
    short,
    spare: fit ? least : null,
  }
}
