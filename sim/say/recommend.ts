/** Why one strategy is recommended and the others are not, a sentence each. */
import type { Recommendation, Standing } from '../ask/recommend.ts'
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { jobWords, studyWords } from './jobs.ts'
import { shownAs } from './shown/index.ts'
import { capital } from './shown/shown.ts'
import type { Wording } from './wording.ts'

const nameOf = (strategy: StrategyId) => strategyOf(strategy).label

/** The heading: the strategy's name, or that there is none. */
export const recommendedName = ({ best }: Recommendation) => (best ? nameOf(best.strategy) : 'None')

export function recommendSentences(scenario: Scenario, { best, next, out }: Recommendation, words: Wording): string[] {
  const spare = ({ result }: Standing) => shownAs(scenario).spare(scenario, result, words).join(', ')
  const well = jobWords(scenario).state(jobOf(scenario).well)
  const others = next.map(
    (standing) => `With ${nameOf(standing.strategy).toLowerCase()} ${well} too: ${spare(standing)}.`,
  )
  const bad = out.map((standing) => `${nameOf(standing.strategy)} is out: ${whyOut(scenario, standing)}.`)
  if (!best) return [none(scenario), ...bad]
  return [`${capital(spare(best))}${ahead(best, next, out)}.`, ...others, ...bad, UNWEIGHED]
}

const none = (scenario: Scenario) =>
  `No strategy shown ${shownAs(scenario).achieves}, within all ratings, as required, beyond doubt and with something to spare: none is recommended.`
const UNWEIGHED = 'Cycle time, cost and wear are not weighed.'

/** What sets it apart from the others. */
function ahead(best: Standing, [second]: Standing[], out: Standing[]): string {
  if (!second) return out.length > 0 ? '; the only one shown that can be recommended' : ''
  if (best.spare! > second.spare!)
    return '; no other that can be recommended keeps as far from its nearest edge of the window'
  const sooner = best.soon !== null && (second.soon === null || best.soon < second.soon)
  return `; as far from its nearest edge of the window as ${nameOf(second.strategy).toLowerCase()}${sooner ? ', and sooner there' : ''}`
}

function whyOut(scenario: Scenario, { result: { verdict }, overloaded, doubtful, short, stated }: Standing): string {
  const { done } = studyWords(scenario.job)
  if (verdict !== jobOf(scenario).well) return verdict
  if (overloaded) return `${done}, but above a rating of motor or drive`
  if (short) return `${done}, but a requirement is missed`
  if (doubtful) return `${done}, but in doubt by its step`
  return stated ? 'nothing to spare' : 'what it has to spare cannot be stated'
}
