/** What would save a part, or lose it: values that hold, what is left there, and what happens instead where nothing helps. */
import type { Rescue } from '../ask/rescue.ts'
import type { Flaw } from '../ask/rescue-judge.ts'
import type { Cost } from '../ask/rescue-parameters.ts'
import type { Interval, Outcome } from '../ask/rescue-values.ts'
import type { Verdict } from '../job/grip/result.ts'
import { exponentOf, quantityAt, type Scenario } from '../scenario/index.ts'
import { decibels, degrees, type Wording } from './wording.ts'

/** What a change costs, in a word or two. */
export const COST_WORDS: Record<Cost, string> = {
  setting: 'a setting of the drive',
  gain: 'a gain',
  tooling: 'new pads',
  mechanics: 'new mechanics',
  hardware: 'another drive or motor',
}

/** Sentences on one parameter, without its name; '' where every value that was tried does what the present one does and it is held. */
export function rescueSentence(scenario: Scenario, rescue: Rescue, words: Wording): string {
  const { interval, islands, flaw, value, becomes, path } = rescue
  const say: Say = (figure) => words.of(quantityAt(scenario, path)!, figure, exponentOf(scenario))
  if (!interval) return instead(rescue, say)
  const where = `Held ${[interval, ...islands].map((each) => spanOf(each, say)).join(', and ')}`
  if (flaw) return `${where}; ${flawWords(flaw)}.`
  if (value === null) return `${where}.`
  if (becomes !== 'held') return `${where}; at ${say(value)} ${becomes ? HAPPENS[becomes] : 'it cannot be run'}.`
  return `${where}. ${left(rescue, say(value), words)}`.trimEnd()
}

type Say = (value: number) => string

function spanOf({ from, to, open }: Interval, say: Say): string {
  if (from === to) return `at ${say(from)}`
  const tried = (open.from && from > 0) || open.to ? ' (as far as tried)' : ''
  return `from ${say(from)} to ${say(to)}${tried}`
}

function flawWords(flaw: Flaw): string {
  switch (flaw.kind) {
    case 'narrow':
      return 'too narrow to be set in practice'
    case 'unstable loop':
      return 'a loop is unstable there'
    case 'phase margin':
      return `only ${degrees(flaw.value)} of phase margin are left there`
    case 'gain margin':
      return `only ${decibels(flaw.value)} of gain margin are left there`
    case 'noise':
      return `well inside it is held with ${flaw.held} of ${flaw.of} seeds of the noise`
  }
}

/** Margins and seeds at what is proposed. */
function left({ margins, seeds }: Rescue, at: string, words: Wording): string {
  const told = [
    margins?.phaseMargin == null ? '' : `${degrees(margins.phaseMargin)} of phase margin`,
    margins?.gainMargin == null ? '' : `${decibels(margins.gainMargin)} of gain margin`,
    margins?.delayMargin == null ? '' : `${words.shortTime(margins.delayMargin)} of delay margin`,
  ].filter((text) => text !== '')
  const noise = seeds ? `it is held with ${seeds.held} of ${seeds.of} seeds of the noise` : ''
  const margin = told.length > 0 ? `the loops keep ${told.join(', ')}` : ''
  const text = [noise, margin].filter((part) => part !== '').join('; ')
  return text === '' ? '' : `At ${at} ${text}.`
}

const HAPPENS: Record<Verdict, string> = {
  held: 'it is held',
  slipped: 'it slides',
  loose: 'it comes loose',
  dropped: 'it slides out',
  marked: 'it is marked',
  crushed: 'it breaks',
  missed: 'nothing grips it when its support goes',
  unstable: 'the grip is unstable',
}

const happens = ({ verdict, late }: Outcome) =>
  verdict === 'missed' && late ? 'the jaws come too late' : HAPPENS[verdict]

/** What happens at the values that were tried: where it stays as it is, and what comes beyond on either side. */
function instead({ tried, from }: Rescue, say: Say): string {
  const [low, high] = [tried[0]!, tried.at(-1)!]
  const now = tried.find(({ value }) => value === from)!
  const above = beyond(
    tried.filter(({ value }) => value > from),
    now,
  )
  const below = beyond(tried.filter(({ value }) => value < from).reverse(), now)
  const turns = [
    ...above.map((each) => `from ${say(each.value)} up ${happens(each)}`),
    ...below.map((each) => `from ${say(each.value)} down ${happens(each)}`),
  ]
  if (low === high) return 'No other value can be set.'
  if (turns.length === 0) return `At every value tried from ${say(low.value)} to ${say(high.value)} ${happens(now)}.`
  return `Not held at any value tried from ${say(low.value)} to ${say(high.value)}: ${turns.join(', ')}.`
}

/** The values, from the present one on, at which something else happens than just before. */
function beyond(away: Outcome[], now: Outcome): Outcome[] {
  let before = happens(now)
  return away.filter((outcome) => {
    const other = happens(outcome) !== before
    before = happens(outcome)
    return other
  })
}
