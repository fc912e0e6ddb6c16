/** What became of the closure; `sim/say` puts it into words. */
import type { Scenario } from '../../scenario/index.ts'
import { isDriven } from '../driven.ts'
import type { RunEnd } from '../job.ts'
import { SETTLED } from '../sums.ts'
import type { CapLoad } from './load.ts'
import { capMetrics } from './metrics.ts'
import type { CapEvents, CapJudgement, CapMetrics, CapVerdict } from './result.ts'
import { allowedTorque, torqueWindow } from './window.ts'

/**
 * The worst that happened decides: unstable, missed, stripped, cross-threaded, forced, loose, else tight. It is tight only where the
 * torque of the thread came to lie in its window after turns enough, and the closure stands; one that still turns as the run ends may yet
 * be turned too far.
 */
export function capVerdict(scenario: Scenario, { metrics, events }: Omit<CapJudgement, 'verdict'>): CapVerdict {
  const { least, most } = torqueWindow(scenario)
  if (events.unstable !== null) return 'unstable'
  if (events.start === null) return 'missed'
  if (events.strip !== null) return 'stripped'
  if (events.jam !== null || isEarly(scenario, events)) return 'cross-threaded'
  const applied = metrics.applicationTorque ?? 0
  if (most !== null && applied > most) return 'forced'
  return metrics.contactTime !== null && applied >= least && events.moving === null ? 'tight' : 'loose'
}

/** The torque was there after fewer turns than a closure takes that stands straight. */
export function isEarly(scenario: Scenario, { reachedTurns }: Pick<CapEvents, 'reachedTurns'>): boolean {
  const { turns } = torqueWindow(scenario)
  return turns !== null && reachedTurns !== null && reachedTurns < turns
}

export function judgeCap(scenario: Scenario, end: RunEnd<CapLoad>): CapJudgement {
  const { load } = end
  const metrics: CapMetrics = capMetrics({ scenario, load, sums: end.sums, period: end.period })
  const events = eventsOf(scenario, end, load)
  return { verdict: capVerdict(scenario, { metrics, events }), metrics, events }
}

const known = (value: number) => (Number.isFinite(value) ? value : null)

/**
 * The closure does not stand as the run ends: it turns on, or the drive has not done its part and its head still turns, or its torque would
 * leave what is allowed if it rose on as it did lately for as long as the run has lasted.
 */
function goesOn(scenario: Scenario, { engaged, sums, period }: RunEnd, { state, lately }: CapLoad): boolean {
  const now = sums.samples * period
  const before = lately.state
  const pace = (state.applied - before.effortBefore) / (now - before.sinceBefore)
  if (now - state.moved < SETTLED) return true
  if (Number.isNaN(engaged) && isDriven(scenario, (state.head - before.placeBefore) / (now - before.sinceBefore)))
    return true
  return state.applied + pace * now > allowedTorque(scenario)
}

function eventsOf(scenario: Scenario, end: RunEnd, load: CapLoad): CapEvents {
  const { engaged, left } = end
  const { state } = load
  return {
    engaged: known(engaged),
    start: known(state.startTime),
    seat: known(state.contactTime),
    reached: known(state.reached),
    reachedTurns: known(state.reachedTurns),
    over: known(state.over),
    jam: known(state.jamTime),
    strip: known(state.stripTime),
    stripTurns: known(state.stripTurns),
    moving: goesOn(scenario, end, load) ? end.sums.samples * end.period : null,
    unstable: known(left),
  }
}
