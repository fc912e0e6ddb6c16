/** What a study of many grips answers, in words. */
import type { ShareOf, SpreadAnswer } from '../ask/spread/answer.ts'
import type { Driver } from '../ask/spread/drivers.ts'
import { DEMANDS, type Demand } from '../ask/spread/outcome.ts'
import { METRICS } from '../job/grip/metrics.ts'
import type { Rating } from '../job/ratings.ts'

const RATING_WORDS: Record<Rating, string> = {
  continuousCurrent: 'Continuous current of the motor',
  peakCurrent: 'Peak current of motor and amplifier',
  windingTemperature: 'Winding temperature',
  busPower: 'Bus power',
}

/** What a grip may fail beside its verdict, as a person calls it. */
export function demandName(demand: Demand): string {
  const rating = demand.startsWith('rating.') ? demand.slice('rating.'.length) : null
  return rating ? RATING_WORDS[rating as Rating] : METRICS.find(({ id }) => id === demand)!.label
}

/** "99.6 %"; never rounded to all or none where some are not. */
export function percent(share: number): string {
  if (share === 0 || share === 1) return `${share * 100} %`
  const digits = share > 0.1 && share < 0.9 ? 1 : Math.min(6, Math.ceil(-Math.log10(Math.min(share, 1 - share))) - 1)
  const text = (100 * share).toFixed(Math.max(1, digits))
  return `${Number(text) === 100 || Number(text) === 0 ? (100 * share).toPrecision(9) : text} %`
}

/** "996 of 1,000 hold (99.0 to 99.9 %)". */
export function holdSentence({ grips, shares }: Pick<SpreadAnswer, 'grips' | 'shares'>): string {
  const held = shares.held!
  return `${grouped(held.count)} of ${grouped(grips)} ${grips === 1 ? 'holds' : 'hold'} (${rangeText(held)})`
}

export const rangeText = ({ low, high }: Pick<ShareOf, 'low' | 'high'>) => {
  const [from, to] = [percent(low), percent(high)]
  return from === to ? from : `${from.replace(' %', '')} to ${to}`
}

/** 12,345 */
export const grouped = (count: number) => String(count).replace(/\B(?=(\d{3})+$)/g, ',')

/** Demands of which some part failed one, the most failed first. */
export const failedDemands = ({ failed }: SpreadAnswer): { demand: Demand; share: ShareOf }[] =>
  DEMANDS.flatMap((demand) => {
    const share = failed[demand]
    return share && share.count > 0 ? [{ demand, share }] : []
  }).sort((a, b) => b.share.count - a.share.count)

/** "makes 71 % (60 to 80 %) alone" as the end of a sentence on one quantity. */
export const driverText = ({ first, total }: Driver) =>
  `${limitsText(first)} alone, ${limitsText(total)} with all that it takes part in`

/** A share of a variance, which may come out a little below 0 or above 1. */
function limitsText({ value, low, high }: Driver['first']): string {
  const inside = (share: number) => Math.min(1, Math.max(0, Number(share.toFixed(3))))
  return `${percent(inside(value))} (${rangeText({ low: inside(low), high: inside(high) })})`
}
