/** What a study of many grips answers, in words. */
import type { ShareOf, SpreadAnswer } from '../ask/spread/answer.ts'
import type { Driver } from '../ask/spread/drivers.ts'
import { type Demand, demandsOf } from '../ask/spread/outcome.ts'
import type { Drivers } from '../ask/spread/run-drivers.ts'
import type { Gained, Tightened } from '../ask/spread/tighten.ts'
import { JOBS } from '../job/index.ts'
import type { Rating } from '../job/ratings.ts'
import type { JobId } from '../scenario/index.ts'
import { JOB_WORDS } from './jobs.ts'

const RATING_WORDS: Record<Rating, string> = {
  continuousCurrent: 'Continuous current of the motor',
  peakCurrent: 'Peak current of motor and amplifier',
  windingTemperature: 'Winding temperature',
  busPower: 'Bus power',
}

/** What a run may fail beside its verdict, as a person calls it. */
export function demandName(job: JobId, demand: Demand): string {
  const rating = demand.startsWith('rating.') ? demand.slice('rating.'.length) : null
  return rating ? RATING_WORDS[rating as Rating] : JOBS[job].figures.find(({ id }) => id === demand)!.label
}

/** "99.6 %"; never rounded to all or none where some are not. */
export function percent(share: number): string {
  if (share === 0 || share === 1) return `${share * 100} %`
  const digits = share > 0.1 && share < 0.9 ? 1 : Math.min(6, Math.ceil(-Math.log10(Math.min(share, 1 - share))) - 1)
  const text = (100 * share).toFixed(Math.max(1, digits))
  return `${Number(text) === 100 || Number(text) === 0 ? (100 * share).toPrecision(9) : text} %`
}

/** "996 of 1,000 hold (99.0 to 99.9 %)". */
export function holdSentence(job: JobId, { grips, shares }: Pick<SpreadAnswer, 'grips' | 'shares'>): string {
  const held = shares[JOBS[job].well]!
  const { one, many } = JOB_WORDS[job].study
  return `${grouped(held.count)} of ${grouped(grips)} ${grips === 1 ? one : many} (${rangeText(held)})`
}

export const rangeText = ({ low, high }: Pick<ShareOf, 'low' | 'high'>) => {
  const [from, to] = [percent(low), percent(high)]
  return from === to ? from : `${from.replace(' %', '')} to ${to}`
}

/** 12,345 */
export const grouped = (count: number) => String(count).replace(/\B(?=(\d{3})+$)/g, ',')

/** Demands of which some part failed one, the most failed first. */
export const failedDemands = (job: JobId, { failed }: SpreadAnswer): { demand: Demand; share: ShareOf }[] =>
  demandsOf(job)
    .flatMap((demand) => {
      const share = failed[demand]
      return share && share.count > 0 ? [{ demand, share }] : []
    })
    .sort((a, b) => b.share.count - a.share.count)

/** "makes 71 % (60 to 80 %) alone" as the end of a sentence on one quantity. */
export const driverText = ({ first, total }: Driver) =>
  `${limitsText(first)} alone, ${limitsText(total)} with all that it takes part in`

/** A share of a variance, which may come out a little below 0 or above 1. */
function limitsText({ value, low, high }: Driver['first']): string {
  const inside = (share: number) => Math.min(1, Math.max(0, Number(share.toFixed(3))))
  return `${percent(inside(value))} (${rangeText({ low: inside(low), high: inside(high) })})`
}

const COMMON_SUBJECTS: Readonly<Record<string, string | undefined>> = {
  failing: 'the failures',
  spare: 'how much parts have to spare',
  refused: 'the parts that are refused',
}

/** What the drivers drive: "the drops". */
export function subjectName(job: JobId, of: Drivers['of']): string {
  const { subjects } = JOB_WORDS[job].study
  return COMMON_SUBJECTS[of] ?? subjects[of] ?? `the failures of “${demandName(job, of)}”`
}

/** "Static friction alone makes 71 % (60 to 80 %) of the drops …": of what does most by itself; `nameOf` names a quantity by its path. */
export function driversSentence(
  job: JobId,
  { of, count, grips, drivers }: Drivers,
  nameOf: (path: string) => string,
): string {
  const [most] = [...drivers].sort((a, b) => b.first.value - a.first.value)
  const counted = `${grouped(count)} of ${grouped(grips)} ${JOB_WORDS[job].study.runs}`
  if (!most)
    return `What makes ${subjectName(job, of)} cannot be told: ${counted} are too ${2 * count < grips ? 'few' : 'many'}.`
  const limits = `${nameOf(most.path)} alone makes ${limitsText(most.first)} of ${subjectName(job, of)}`
  const measured =
    of === 'spare' ? 'shares of the variance' : `shares of the variance of whether it happens, ${counted}`
  return `${limits}, ${limitsText(most.total)} with all that it takes part in (${measured}).`
}

/** "98.2 % hold as required (97.0 to 99.1 %), 4.1 points more (3.0 to 5.2)". */
export function tightText(job: JobId, { share, gain }: Gained): string {
  return `${percent(share.share)} ${JOB_WORDS[job].study.many} as required (${rangeText(share)}), ${gainText(gain)}`
}

function gainText({ share, low, high }: Gained['gain']): string {
  const points = (value: number) =>
    Number((100 * value).toPrecision(2))
      .toString()
      .replace('-', '−')
  if (low > 0) return `${points(share)} points more (${points(low)} to ${points(high)})`
  if (high < 0) return `${points(-share)} points fewer (${points(-high)} to ${points(-low)})`
  return `no difference that these parts can tell (${points(low)} to ${points(high)} points)`
}

/** Which tolerance to buy, of one strategy, by what was gained; `nameOf` names a quantity by its path. */
export function tightSentence(
  job: JobId,
  tightened: Tightened[],
  factor: number,
  nameOf: (path: string) => string,
): string {
  const [best] = tightened.filter(({ gain }) => gain.low > 0).sort((a, b) => b.gain.share - a.gain.share)
  const how = factor === 0 ? 'no scatter' : factor === 0.5 ? 'half the scatter' : `${percent(factor)} of the scatter`
  if (!best)
    return `No single quantity with ${how} ${JOB_WORDS[job].study.does} more parts, as far as these parts can tell.`
  const near = tightened.filter((each) => each !== best && each.gain.high > best.gain.low)
  const likewise = near.length
    ? ` These parts cannot tell it from ${near.map(({ path }) => nameOf(path)).join(', ')}.`
    : ''
  return `${nameOf(best.path)} with ${how} buys most: ${tightText(job, best)}.${likewise}`
}

/** "Of 200 parts that vary as the file says 98.0 % hold as required (…), 4 points more (…)", after a change. */
export const afterSentence = (job: JobId, gained: Gained, grips: number) =>
  `Of ${grouped(grips)} parts that vary as the file says ${tightText(job, gained)}.`

/** Where no part follows what was changed. */
export const notAfter = (job: JobId): string =>
  `How many parts it ${JOB_WORDS[job].study.does} cannot be told: its spread has values of its own, or the format refuses the change.`

/** Of parts that a search has not seen: the best of many is a little lucky on those that chose it. */
export const othersSentence = (job: JobId, gained: Gained, grips: number) =>
  `On parts that they were not chosen by, against the gains on the bench: of ${grouped(grips)} parts that vary as the file says ${tightText(job, gained)}.`
