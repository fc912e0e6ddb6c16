/** What became of the joint; `sim/say` puts it into words. */
import type { Scenario } from '../../scenario/index.ts'
import { isDriven } from '../driven.ts'
import type { RunEnd } from '../job.ts'
import { SETTLED } from '../sums.ts'
import type { PressLoad } from './load.ts'
import { pressMetrics } from './metrics.ts'
import type { PressEvents, PressJudgement, PressMetrics, PressVerdict } from './result.ts'
import { jointWindow } from './window.ts'

/**
 * The worst that happened decides: unstable, missed, forced, tilted, slack, short, else seated. A joint is seated only where its force
 * stayed in the band at every depth that it has one for, never went over a limit, and the bushing came to stand where it should, pressed as
 * hard as it should; one that still moves as the run ends may yet go too deep.
 */
export function pressVerdict(scenario: Scenario, { metrics, events }: Omit<PressJudgement, 'verdict'>): PressVerdict {
  const { depth, seat } = jointWindow(scenario)
  if (events.unstable !== null) return 'unstable'
  if (metrics.contactTime === null) return 'missed'
  const reached = metrics.depth ?? 0
  if (events.over !== null || events.jammedDepth !== null || exceeds(metrics.seatForce, seat.most)) return 'forced'
  if (events.above !== null) return 'tilted'
  if (exceeds(reached, depth.most)) return 'forced'
  if (events.below !== null) return 'slack'
  const pressed = seat.least === null || (metrics.seatForce ?? 0) >= seat.least
  return reached >= depth.least && pressed && events.moving === null ? 'seated' : 'short'
}

const exceeds = (value: number | null, most: number | null) => value !== null && most !== null && value > most

export function judgePress(scenario: Scenario, end: RunEnd<PressLoad>): PressJudgement {
  const { load } = end
  const metrics: PressMetrics = pressMetrics({ scenario, load, sums: end.sums, period: end.period })
  const events = eventsOf(scenario, end, load)
  return { verdict: pressVerdict(scenario, { metrics, events }), metrics, events }
}

const known = (value: number) => (Number.isFinite(value) ? value : null)

/** No shoulder stops the bushing, and it moves as the run ends, or sticks under a ram whose drive has not done its part and presses on. */
function goesOn(scenario: Scenario, { engaged, sums, period }: RunEnd, { state, lately }: PressLoad): boolean {
  const now = sums.samples * period
  const before = lately.state
  if (!Number.isNaN(state.seatTime)) return false
  if (now - state.moved < SETTLED) return true
  return Number.isNaN(engaged) && isDriven(scenario, (state.travel - before.placeBefore) / (now - before.sinceBefore))
}

function eventsOf(scenario: Scenario, end: RunEnd, load: PressLoad): PressEvents {
  const { engaged, left } = end
  const { state, band } = load
  const { below, belowTime, above, aboveTime, jammed, where } = band.state
  return {
    engaged: known(engaged),
    seat: known(state.seatTime),
    over: known(state.over),
    overDepth: known(state.overDepth),
    below: known(belowTime),
    belowDepth: known(below),
    above: known(aboveTime),
    aboveDepth: known(above),
    jammedDepth: known(jammed),
    closestDepth: known(where),
    moving: goesOn(scenario, end, load) ? end.sums.samples * end.period : null,
    unstable: known(left),
  }
}
