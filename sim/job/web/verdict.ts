/** What became of the web; `sim/say` puts it into words. */
import type { Scenario } from '../../scenario/index.ts'
import type { RunEnd } from '../job.ts'
import type { WebLoad } from './load.ts'
import { webMetrics } from './metrics.ts'
import type { WebEvents, WebJudgement, WebVerdict } from './result.ts'

/**
 * The worst that happened decides: unstable, torn, stretched, slack, else taut. A web is taut only where it had its least tension at every
 * instant of the time that counts, and at none of the run more than the most; one whose run did not get that far never was.
 */
export function webVerdict({ metrics, events }: Omit<WebJudgement, 'verdict'>): WebVerdict {
  if (events.unstable !== null) return 'unstable'
  if (events.torn !== null) return 'torn'
  if (events.over !== null) return 'stretched'
  const taut = events.under === null && metrics.tautTime !== null && metrics.leastTension !== null
  return taut ? 'taut' : 'slack'
}

export function judgeWeb(scenario: Scenario, end: RunEnd<WebLoad>): WebJudgement {
  const { load } = end
  const metrics = webMetrics({ scenario, load, sums: end.sums, period: end.period })
  const events = eventsOf(end, load)
  return { verdict: webVerdict({ metrics, events }), metrics, events }
}

const known = (value: number) => (Number.isFinite(value) ? value : null)

const eventsOf = ({ engaged, left }: RunEnd, { state }: WebLoad): WebEvents => ({
  engaged: known(engaged),
  over: known(state.over),
  under: known(state.under),
  torn: known(state.torn),
  tearingTension: known(state.tornAt),
  unstable: known(left),
})
