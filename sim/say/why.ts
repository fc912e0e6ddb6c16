/** Why the force became what it was: what the part saw, what the setting means, what made most of the difference. */
import type { Cause, Why } from '../ask/why.ts'
import { jobOf } from '../job/index.ts'
import type { JobResult } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'
import { effortIn, jobWords, whyFigure } from './jobs.ts'
import { reasonOf } from './reason.ts'
import type { Wording } from './wording.ts'

/** Causes that add or take less than this share of the figure are not worth a sentence. */
const WORTH = 0.03

export function whySentence<R extends JobResult>(scenario: Scenario, why: Why<R>, words: Wording): string {
  if (why.force === null) return nothingToTakeApart(scenario, why, words)
  const setting = why.causes[0]?.force ?? 0
  const outcome = jobWords<R>(scenario).why.outcome(scenario, why, why.force, words)
  return [outcome, difference(why, why.force, setting, effortIn(scenario, words))].join(' ')
}

/** How the causes were found; '' where there was no force to take apart. */
export function whyRule({ causes, orders, force }: Pick<Why, 'causes' | 'orders' | 'force'>): string {
  if (force === null) return ''
  const acting = causes.filter(({ cause }) => cause !== 'setting' && cause !== 'rest').length
  const below = 'A cause below 0.1 % of the figure counts with what is left.'
  if (acting === 0) return 'No cause that can be taken away makes 0.1 % of the figure.'
  if (acting === 1) return `The grip is simulated again without the one cause that acts. ${below}`
  const how = orders.drawn
    ? `in ${orders.counted} orders, drawn at random in pairs of one and its reverse; ± is the standard error of that`
    : 'in every order'
  return [
    `The grip is simulated again with the causes taken away ${how}.`,
    'A cause counts with the mean of what its removal changes (Shapley value), so that causes add up and no order decides.',
    `Its range goes from what changes if it alone is taken away to what changes if it is the last to go. ${below}`,
  ].join(' ')
}

function difference<R extends JobResult>(
  why: Why<R>,
  whole: number,
  setting: number,
  effort: (value: number) => string,
): string {
  const { causes, bound } = why
  const others = causes
    .slice(1)
    .filter(({ force }) => Math.abs(force) >= WORTH * Math.max(whole, setting))
    .sort((a, b) => Math.abs(b.force) - Math.abs(a.force))
  const [first, second] = others
  if (whyFigure(why).least && bound !== null && setting < bound)
    return `The setting itself means only ${effort(setting)}.`
  if (!first) return `That is about what the setting means, ${effort(setting)}.`
  const tell = ({ label, force }: Cause) =>
    `${label.charAt(0).toLowerCase()}${label.slice(1).replace(',', '')} ${force > 0 ? 'adds' : 'takes'} ${effort(Math.abs(force))}`
  return `The setting means ${effort(setting)}; ${tell(first)}${second ? `, ${tell(second)}` : ''}.`
}

function nothingToTakeApart<R extends JobResult>(scenario: Scenario, why: Why<R>, words: Wording): string {
  const { verdict, run } = why
  if (!run) return 'There is no force to take apart.'
  const said = jobWords<R>(scenario).why
  if (!jobOf(scenario).why.forceless.has(verdict)) return said.lost
  const reason = reasonOf(scenario, { verdict, ...run }, words)
  const rest =
    verdict === 'unstable'
      ? 'An unstable grip has no force that could be taken apart; its gains or its step must change first.'
      : said.missed(run, words)
  return `${reason} ${rest}`
}
