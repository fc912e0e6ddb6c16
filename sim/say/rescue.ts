/** What would save a part, or lose it: values that hold, what is left there, and what happens instead where nothing helps. */
import type { Rescue } from '../ask/rescue.ts'
import type { Flaw } from '../ask/rescue-judge.ts'
import type { Cost } from '../ask/rescue-parameters.ts'
import type { Interval, Outcome } from '../ask/rescue-values.ts'
import { JOBS } from '../job/index.ts'
import { exponentOf, type JobId, quantityAt, type Scenario } from '../scenario/index.ts'
import { JOB_WORDS } from './jobs.ts'
import { decibels, degrees, type Wording } from './wording.ts'

/** What a change costs, in a word or two. */
export const costWords = (job: JobId, cost: Cost): string =>
  cost === 'tooling' ? JOB_WORDS[job].rescue.tooling : COST_WORDS[cost]

const COST_WORDS: Record<Exclude<Cost, 'tooling'>, string> = {
  setting: 'a setting of the drive',
  gain: 'a gain',
  mechanics: 'new mechanics',
  hardware: 'another drive or motor',
}

/** Sentences on one parameter, without its name; '' where every value that was tried does what the present one does and it is done well. */
export function rescueSentence(scenario: Scenario, rescue: Rescue, words: Wording): string {
  const { interval, islands, flaw, value, becomes, path } = rescue
  const say: Say = (figure) => words.of(quantityAt(scenario, path)!, figure, exponentOf(scenario))
  const { job } = scenario
  const { done } = JOB_WORDS[job].study
  if (!interval) return instead(job, rescue, say)
  const where = `${capital(done)} ${[interval, ...islands].map((each) => spanOf(each, say)).join(', and ')}`
  if (flaw) return `${where}; ${flawWords(flaw, done)}.`
  if (value === null) return `${where}.`
  if (becomes !== JOBS[job].well)
    return `${where}; at ${say(value)} ${becomes ? JOB_WORDS[job].rescue.happens[becomes] : 'it cannot be run'}.`
  return `${where}. ${left(rescue, done, say(value), words)}`.trimEnd()
}

type Say = (value: number) => string

function spanOf({ from, to, open }: Interval, say: Say): string {
  if (from === to) return `at ${say(from)}`
  const tried = (open.from && from > 0) || open.to ? ' (as far as tried)' : ''
  return `from ${say(from)} to ${say(to)}${tried}`
}

function flawWords(flaw: Flaw, done: string): string {
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
      return `well inside it is ${done} with ${flaw.held} of ${flaw.of} seeds of the noise`
  }
}

/** Margins and seeds at what is proposed. */
function left({ margins, seeds }: Rescue, done: string, at: string, words: Wording): string {
  const told = [
    margins?.phaseMargin == null ? '' : `${degrees(margins.phaseMargin)} of phase margin`,
    margins?.gainMargin == null ? '' : `${decibels(margins.gainMargin)} of gain margin`,
    margins?.delayMargin == null ? '' : `${words.shortTime(margins.delayMargin)} of delay margin`,
  ].filter((text) => text !== '')
  const noise = seeds ? `it is ${done} with ${seeds.held} of ${seeds.of} seeds of the noise` : ''
  const margin = told.length > 0 ? `the loops keep ${told.join(', ')}` : ''
  const text = [noise, margin].filter((part) => part !== '').join('; ')
  return text === '' ? '' : `At ${at} ${text}.`
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1)

type Happens = (outcome: Outcome) => string

const happensTo = (job: JobId): Happens => {
  const { happens, late } = JOB_WORDS[job].rescue
  return (outcome) => (outcome.verdict === 'missed' && outcome.late ? late : happens[outcome.verdict]!)
}

/** What happens at the values that were tried: where it stays as it is, and what comes beyond on either side. */
function instead(job: JobId, { tried, from }: Rescue, say: Say): string {
  const happens = happensTo(job)
  const [low, high] = [tried[0]!, tried.at(-1)!]
  const now = tried.find(({ value }) => value === from)!
  const above = beyond(
    tried.filter(({ value }) => value > from),
    now,
    happens,
  )
  const below = beyond(tried.filter(({ value }) => value < from).reverse(), now, happens)
  const turns = [
    ...above.map((each) => `from ${say(each.value)} up ${happens(each)}`),
    ...below.map((each) => `from ${say(each.value)} down ${happens(each)}`),
  ]
  if (low === high) return 'No other value can be set.'
  if (turns.length === 0) return `At every value tried from ${say(low.value)} to ${say(high.value)} ${happens(now)}.`
  return `Not ${JOB_WORDS[job].study.done} at any value tried from ${say(low.value)} to ${say(high.value)}: ${turns.join(', ')}.`
}

/** The values, from the present one on, at which something else happens than just before. */
function beyond(away: Outcome[], now: Outcome, happens: Happens): Outcome[] {
  let before = happens(now)
  return away.filter((outcome) => {
    const other = happens(outcome) !== before
    before = happens(outcome)
    return other
  })
}
