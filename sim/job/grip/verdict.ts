/** What became of the part; `sim/say` puts it into words. */
import type { Bench } from '../../cycle/bench.ts'
import { CURRENT_LOOP, NUMBERS, POSITION_LOOP, TRAVEL } from '../../cycle/rails.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { GripLoad, SLIP_LIMIT } from './load.ts'
import { metricsOf } from './metrics.ts'
import type { GripEvents, GripResult, Verdict } from './result.ts'

/** The worst that happened decides: unstable, crushed, missed, dropped, slipped, marked, else held. */
export function verdictOf(scenario: Scenario, { events, metrics }: Pick<GripResult, 'events' | 'metrics'>): Verdict {
  if (events.unstable !== null) return 'unstable'
  if (events.crack !== null) return 'crushed'
  if (metrics.contactTime === null || events.lift === null) return 'missed'
  if (events.drop !== null) return 'dropped'
  if ((metrics.slipDistance ?? 0) > SLIP_LIMIT) return 'slipped'
  return (metrics.peakForce ?? 0) > markLimit(scenario) ? 'marked' : 'held'
}

/** Force above which the part carries a mark or a dent [N]. */
export const markLimit = ({ part }: Scenario) => Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)

const CAUSES: Record<number, GripResult['cause']> = {
  [NUMBERS]: 'numbers',
  [TRAVEL]: 'travel',
  [POSITION_LOOP]: 'position loop',
  [CURRENT_LOOP]: 'current loop',
}

const known = (time: number) => (Number.isFinite(time) ? time : null)

/** `bench` as its run has left it; throws a TypeError if it does not grip. */
export function judge(scenario: Scenario, strategy: StrategyId, bench: Bench, hash: string): GripResult {
  const load = gripOf(bench)
  const metrics = metricsOf({ scenario, load, sums: bench.figures.sums, period: bench.period })
  const events = eventsOf(bench, load)
  const verdict = verdictOf(scenario, { metrics, events })
  const cause = CAUSES[bench.rails.state.cause] ?? ''
  return { strategy, verdict, stepError: null, metrics, events, hash, cause, step: bench.axis.step }
}

/** Least mean force of the two contacts while the part hung in them [N]; null: it never did. */
export const weakestOf = (bench: Bench) => known(gripOf(bench).sums.weakest)

function gripOf({ load }: Bench): GripLoad {
  if (load instanceof GripLoad) return load
  throw new TypeError('a bench that does not grip')
}

function eventsOf(bench: Bench, { state }: GripLoad): GripEvents {
  return {
    lift: known(state.lift),
    engaged: known(bench.state.engaged),
    crack: known(state.crackTime),
    slip: known(state.slip),
    drop: known(state.drop),
    release: known(state.free),
    unstable: known(bench.rails.state.left),
  }
}
