/** Why the force became what it was: what the part saw, what the setting means, what made most of the difference. */
import type { Cause, MissedRun, Why } from '../ask/why.ts'
import type { Scenario } from '../scenario/index.ts'
import { reasonOf } from './reason.ts'
import type { Wording } from './wording.ts'

/** Causes that add or take less than this share of the figure are not worth a sentence. */
const WORTH = 0.03

export function whySentence(scenario: Scenario, why: Why, words: Wording): string {
  if (why.force === null) return nothingToTakeApart(scenario, why, words)
  const setting = why.causes[0]?.force ?? 0
  return [outcome(scenario, why, why.force, words), difference(why, why.force, setting, words)].join(' ')
}

/** How the causes were found; '' where there was no force to take apart. */
export function whyRule({ causes, orders, force }: Why): string {
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

function outcome(scenario: Scenario, { verdict, figure, bound }: Why, whole: number, words: Wording): string {
  const force = words.force(whole)
  const most = bound === null ? '' : words.force(bound)
  if (figure === 'hold') {
    if (bound === null) return `The grip is left with ${force} at its weakest.`
    if (whole < bound) return `The grip is left with ${force} at its weakest, where the hardest moment needs ${most}.`
    return `The grip keeps ${force}, where ${most} would do if the part did not swing in the pads.`
  }
  if (verdict === 'crushed') return `The part breaks at ${most}; one that did not break would see ${force}.`
  if (verdict === 'marked')
    return whole > (scenario.part.yieldForce ?? Number.POSITIVE_INFINITY)
      ? `The part gives way at ${most}; one that did not would see ${force}.`
      : `The part sees ${force} and is marked above ${most}.`
  return bound === null ? `The part sees at most ${force}.` : `The part sees at most ${force} and takes ${most}.`
}

function difference({ causes, bound, figure }: Why, whole: number, setting: number, words: Wording): string {
  const others = causes
    .slice(1)
    .filter(({ force }) => Math.abs(force) >= WORTH * Math.max(whole, setting))
    .sort((a, b) => Math.abs(b.force) - Math.abs(a.force))
  const [first, second] = others
  if (figure === 'hold' && bound !== null && setting < bound)
    return `The setting itself means only ${words.force(setting)}.`
  if (!first) return `That is about what the setting means, ${words.force(setting)}.`
  const tell = ({ label, force }: Cause) =>
    `${label.charAt(0).toLowerCase()}${label.slice(1).replace(',', '')} ${force > 0 ? 'adds' : 'takes'} ${words.force(Math.abs(force))}`
  return `The setting means ${words.force(setting)}; ${tell(first)}${second ? `, ${tell(second)}` : ''}.`
}

function nothingToTakeApart(scenario: Scenario, why: Why, words: Wording): string {
  const { verdict, run } = why
  if (!run) return 'There is no force to take apart.'
  if (verdict === 'unstable')
    return `${reasonOf(scenario, { verdict, ...run }, words)} An unstable grip has no force that could be taken apart; its gains or its step must change first.`
  if (verdict === 'missed') return `${reasonOf(scenario, { verdict, ...run }, words)} ${whyMissed(run, words)}`
  return 'On a part that cannot be lost the same run leaves its rails, so there is no force to take apart.'
}

function whyMissed({ metrics, events, feels, travel, way }: MissedRun, words: Wording): string {
  const { contactTime } = metrics
  const { engaged } = events
  if (contactTime !== null) return `The jaws touch it at ${words.time(contactTime)} and let go of it again.`
  const gap = words.length(Math.max(0, way.contact - travel))
  if (engaged !== null) {
    if (feels === 'limit') return `The clamp current does not carry the jaws to the part: they stand ${gap} before it.`
    const mistaken = feels === 'gauge' ? 'the gauge’s reading' : 'the effort of the move'
    return `At ${words.time(engaged)} ${mistaken} is taken for contact, and the jaws stop ${gap} before it.`
  }
  if (way.end < way.contact) return `The stroke of a jaw ends ${words.length(way.contact - way.end)} before the part.`
  if (way.arrival >= way.lift)
    return `The approach takes ${words.time(way.arrival)} to the part, and the support goes at ${words.time(way.lift)}.`
  return `The drive does not follow its profile to the part: the jaws stand ${gap} before it.`
}
