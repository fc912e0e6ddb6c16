/**
 * Which strategy the figures of one simulated run speak for: of those that do the work well, within all ratings, as required and
 * without doubt, the one that stays farthest from every edge of its window. A rule of this program, no standard; cost, cycle time and wear are not in it.
 */
import { jobOf } from '../job/index.ts'
import type { RunResult } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'

export interface Standing {
  strategy: StrategyId
  result: RunResult
  /** From the start of the work to its end, as the job's figure of that has it [s]; null: it never came to it. */
  soon: number | null
  /** A rating of motor or drive is exceeded; the verdict cannot be relied on. */
  overloaded: boolean
  doubtful: boolean
  /** A requirement is not met. */
  short: boolean
  /** What there is to spare can be said at all. */
  stated: boolean
  /** The smallest of its margins; what has no limit is no margin. Null: it may not be recommended. */
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

/** Distances nearer to each other than this are one distance: the quicker one decides. */
const ALIKE = 0.005

/** Runs of one scenario, one a strategy. */
export function recommend(scenario: Scenario, results: readonly RunResult[]): Recommendation {
  const standings = results.map((result) => standingOf(scenario, result))
  const fit = standings.filter(({ spare }) => spare !== null).sort((a, b) => b.spare! - a.spare!)
  const close = fit.filter(({ spare }) => spare! > fit[0]!.spare! - ALIKE)
  const timed = close.filter(({ soon }) => soon !== null).sort((a, b) => a.soon! - b.soon!)
  const best = timed[0] ?? close[0] ?? null
  return {
    best,
    next: fit.filter((standing) => standing !== best),
    out: standings.filter(({ spare }) => spare === null),
  }
}

function standingOf(scenario: Scenario, result: RunResult): Standing {
  const { strategy, verdict, metrics, overloads, requirements, doubt } = result
  const { study, tune, well } = jobOf(scenario)
  const overloaded = overloads.length > 0
  const doubtful = doubt !== null
  const short = requirements.some(({ met }) => !met)
  const spare = study.spare(scenario, result)
  const fit = verdict === well && !overloaded && !doubtful && !short && spare !== null && spare >= 0
  const soon = metrics[tune.time] ?? null
  return { strategy, result, soon, overloaded, doubtful, short, stated: spare !== null, spare: fit ? spare : null }
}
