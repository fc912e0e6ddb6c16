/** What a search for rare failures answers, in words. */
import { limitsOf } from '../ask/spread/rare.ts'
import type { RareGrips } from '../ask/spread/run-rare.ts'
import type { JobId } from '../scenario/index.ts'
import { JOB_WORDS } from './jobs.ts'
import { grouped, percent, rangeText } from './spread.ts'

/** The search goes the way on which there is ever less to spare. */
const FAR = 'The search follows what there is to spare: a second way to fail, far from this one, may be missed.'

/** "About 1 in 12,300 parts fails: 0.0081 % (0.0066 to 0.0099 %; …)", and what to make of it; the answer first. */
export function rareSentences(job: JobId, { rare, grips, refused }: RareGrips): string[] {
  const { runs } = JOB_WORDS[job].study
  const cut =
    refused > 0
      ? [`${grouped(refused)} parts broke a rule of the format and count as ${JOB_WORDS[job].study.counted}.`]
      : []
  switch (rare.kind) {
    case 'below':
      return [`Fewer than 1 in 10,000,000 parts fail, as far as ${grouped(grips)} ${runs} can tell.`, FAR, ...cut]
    case 'flat':
      return [
        `It cannot be said: from ${percent(rare.share)} of all parts on, more than half have the same distance from failing, so none shows the way. Plain sampling has to be asked.`,
        ...cut,
      ]
    case 'share': {
      const { share, variation } = rare
      const odds = share < 0.1 ? `About 1 in ${grouped(Math.round(1 / share))} parts fails` : 'Not so rare'
      const certainty = `coefficient of variation ${Number((100 * variation).toPrecision(2))} %`
      return [
        `${odds}: ${percent(share)} (${rangeText(limitsOf(share, variation))}; ${certainty}), told from ${grouped(grips)} ${runs}.`,
        FAR,
        ...cut,
      ]
    }
  }
}
