/** The verdict on a grip, and why, in one sentence: a number, a limit, a time. */
import { jobOf } from '../job/index.ts'
import type { Cause, RunResult } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'
import { doubtSentence } from './doubt.ts'
import type { Judged } from './job.ts'
import { jobWords } from './jobs.ts'
import { overloadSentences } from './ratings.ts'
import { missedSentences } from './requirements.ts'
import type { Wording } from './wording.ts'

/** What stands beside a verdict; a run that is told of for another reason leaves it out. */
type Beside = Pick<RunResult, 'overloads' | 'requirements' | 'doubt' | 'step'>

const CAUSES: Record<Cause, string> = {
  '': '',
  numbers: 'the numbers are no longer finite',
  travel: 'the {output} has left its travel',
  'position loop': 'the position loop bangs from limit to limit',
  'current loop': 'the current loop bangs between the rails of its voltage',
}

/** First what is in doubt, then the outcome, then a sentence for every rating that is exceeded and every requirement that is not met. */
export function reasonOf(scenario: Scenario, result: Judged & Partial<Beside>, words: Wording): string {
  const { metrics, overloads = [], requirements = [], doubt = null, step = 0 } = result
  return [
    doubtSentence(scenario, { doubt, step }, words),
    outcome(scenario, result, words),
    ...overloadSentences(scenario, { metrics, overloads }, words),
    ...missedSentences(scenario, { requirements }, words),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

function outcome(scenario: Scenario, result: Judged, words: Wording): string {
  const { verdict, events, cause } = result
  if (verdict !== 'unstable') return jobWords(scenario).outcome(scenario, result, words)
  const how = CAUSES[cause].replace('{output}', jobOf(scenario).output.label)
  return `Leaves its rails at ${words.time(events.unstable ?? 0)}${how && `: ${how}`}.`
}
