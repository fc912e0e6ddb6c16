/** What became of the part; `sim/say` puts it into words. */
import type { Scenario } from '../../scenario/index.ts'
import type { RunEnd } from '../job.ts'
import type { GripLoad } from './load.ts'
import { metricsOf } from './metrics.ts'
import type { GripEvents, GripJudgement, Verdict } from './result.ts'

/**
 * The worst that happened decides: unstable, crushed, missed, dropped, loose, slipped, marked, else held. A part is held only where
 * both contacts stayed closed, friction had something to spare all the time, and what pulls on it in the end is borne, so its hold
 * margin is never below 0.
 */
export function verdictOf(scenario: Scenario, { events, metrics }: Omit<GripJudgement, 'verdict'>): Verdict {
  if (events.unstable !== null) return 'unstable'
  if (events.crack !== null) return 'crushed'
  if (metrics.contactTime === null || events.lift === null) return 'missed'
  if (events.drop !== null) return 'dropped'
  if (events.loose !== null) return 'loose'
  if (events.slip !== null) return 'slipped'
  if ((metrics.holdMargin ?? 0) < 0) return 'loose' // slow to feel what pulls on it, and let go of before it gave way
  return (metrics.peakForce ?? 0) > markLimit(scenario) ? 'marked' : 'held'
}

/** Force above which the part carries a mark or a dent [N]. */
export const markLimit = ({ part }: Scenario) => Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)

const known = (time: number) => (Number.isFinite(time) ? time : null)

export function judgeEnd(scenario: Scenario, end: RunEnd<GripLoad>): GripJudgement {
  const { load } = end
  const metrics = metricsOf({ scenario, load, sums: end.sums, period: end.period })
  const events = eventsOf(end, load)
  return { verdict: verdictOf(scenario, { metrics, events }), metrics, events }
}

/** Least mean force of the two contacts while the part hung in them [N]; null: it never did. */
export const weakestOf = ({ load }: Pick<RunEnd<GripLoad>, 'load'>) => known(load.sums.weakest)

function eventsOf({ engaged, left }: RunEnd, { state }: GripLoad): GripEvents {
  return {
    lift: known(state.lift),
    engaged: known(engaged),
    crack: known(state.crackTime),
    slip: known(state.slip),
    loose: known(state.loose),
    met: known(state.met),
    mark: known(state.markTime),
    drop: known(state.drop),
    release: known(state.free),
    unstable: known(left),
  }
}
