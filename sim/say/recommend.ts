/** Why one strategy is recommended and the others are not, a sentence each. */
import type { Recommendation, Standing } from '../ask/recommend.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import type { Wording } from './wording.ts'

const nameOf = (strategy: StrategyId) => strategyOf(strategy).label

/** The heading: the strategy's name, or that there is none. */
export const recommendedName = ({ best }: Recommendation) => (best ? nameOf(best.strategy) : 'None')

export function recommendSentences({ best, next, out }: Recommendation, words: Wording): string[] {
  const others = next.map((standing) => `${nameOf(standing.strategy)} holds too: ${distance(standing, words)}.`)
  const bad = out.map((standing) => `${nameOf(standing.strategy)} is out: ${whyOut(standing)}.`)
  if (!best) return [NONE, ...bad]
  return [`${capital(distance(best, words))}${ahead(best, next, out)}.`, ...others, ...bad, UNWEIGHED]
}

const NONE =
  'No strategy shown holds the part undamaged, within all ratings, as required, beyond doubt and with something to spare: none is recommended.'
const UNWEIGHED = 'Cycle time, cost and wear are not weighed.'

/** What sets it apart from the others. */
function ahead(best: Standing, [second]: Standing[], out: Standing[]): string {
  if (!second) return out.length > 0 ? '; the only one shown that can be recommended' : ''
  if (best.spare! > second.spare!)
    return '; no other that can be recommended keeps as far from its nearer edge of the window'
  const sooner = best.gripTime !== null && (second.gripTime === null || best.gripTime < second.gripTime)
  return `; as far from its nearer edge of the window as ${nameOf(second.strategy).toLowerCase()}${sooner ? ', and sooner at its force' : ''}`
}

function distance({ holdMargin, damageMargin }: Standing, words: Wording): string {
  const damage = damageMargin === null ? 'no damage limit is stated' : `${words.ratio(damageMargin)} before damage`
  return `${words.ratio(holdMargin ?? 0)} more hold than needed, ${damage}`
}

function whyOut({ verdict, holdMargin, overloaded, doubtful, short }: Standing): string {
  if (verdict !== 'held') return verdict
  if (overloaded) return 'held, but above a rating of motor or drive'
  if (short) return 'held, but a requirement is missed'
  if (doubtful) return 'held, but in doubt by its step'
  return holdMargin === null ? 'its hold cannot be stated' : 'nothing to spare'
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
