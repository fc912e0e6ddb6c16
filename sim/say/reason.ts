/** The verdict on a grip, and why, in one sentence: a number, a limit, a time. */
import type { GripResult, Metrics } from '../job/grip/result.ts'
import type { Scenario } from '../scenario/index.ts'
import { doubtSentence } from './doubt.ts'
import { overloadSentences } from './ratings.ts'
import type { Wording } from './wording.ts'

export type Judged = Pick<GripResult, 'verdict' | 'metrics' | 'events' | 'cause'>

/** What stands beside a verdict; a run that is told of for another reason leaves it out. */
type Beside = Pick<GripResult, 'overloads' | 'doubt' | 'step'>

const CAUSES: Record<GripResult['cause'], string> = {
  '': '',
  numbers: 'the numbers are no longer finite',
  travel: 'the jaw has left its travel',
  'position loop': 'the position loop bangs from limit to limit',
  'current loop': 'the current loop bangs between the rails of its voltage',
}

/** First what is in doubt, then the outcome, then a sentence for every rating that is exceeded. */
export function reasonOf(scenario: Scenario, result: Judged & Partial<Beside>, words: Wording): string {
  const { metrics, overloads = [], doubt = null, step = 0 } = result
  return [
    doubtSentence(scenario, { doubt, step }, words),
    outcome(scenario, result, words),
    ...overloadSentences(scenario, { metrics, overloads }, words),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

function outcome(scenario: Scenario, { verdict, metrics, events, cause }: Judged, words: Wording): string {
  const { part, jaws } = scenario
  const peak = metrics.peakForce ?? 0
  const at = (time: number | null) => words.time(time ?? 0)
  switch (verdict) {
    case 'unstable':
      return `Leaves its rails at ${at(events.unstable)}${cause ? `: ${CAUSES[cause]}` : ''}.`
    case 'missed':
      return metrics.contactTime === null
        ? `Never touches the part within ${words.time(scenario.run.duration)}.`
        : 'No force on the part when its support goes: it stays behind.'
    case 'crushed':
      return `Cracks at ${at(events.crack)}: ${words.force(peak)} on a ${words.force(part.crackForce ?? 0)} part.`
    case 'dropped':
      return `Lost at ${at(events.drop)}: slides past the ${words.length(jaws.padLength)} pad${shortfall(metrics, words)}.`
    case 'slipped':
      return `Slides ${words.length(metrics.slipDistance ?? 0)} from ${at(events.slip)} on${shortfall(metrics, words)}.`
    case 'marked': {
      const dented = part.yieldForce !== undefined && peak > part.yieldForce
      const limit = Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)
      return `${dented ? 'Dented' : 'Marked'} at ${at(metrics.peakForceTime)}: ${words.force(peak)} on a ${words.force(limit)} limit.`
    }
    case 'held':
      return holding(metrics, words)
  }
}

function shortfall({ settledForce, requiredForce }: Metrics, words: Wording): string {
  if (requiredForce === null || settledForce === null) return ''
  return settledForce < requiredForce
    ? `, with ${words.force(settledForce)} where ${words.force(requiredForce)} hold`
    : `, although ${words.force(settledForce)} should hold ${words.force(requiredForce)}`
}

function holding({ settledForce, requiredForce, holdMargin, damageMargin }: Metrics, words: Wording): string {
  const grip = settledForce === null ? 'Holds' : `Holds with ${words.force(settledForce)}`
  const need = requiredForce === null ? '' : ` where ${words.force(requiredForce)} are needed`
  const spare = [
    holdMargin === null ? '' : `${words.ratio(holdMargin)} to spare before it slides`,
    damageMargin === null ? '' : `${words.ratio(damageMargin)} before damage`,
  ].filter((text) => text !== '')
  return `${grip}${need}${spare.length > 0 ? `; ${spare.join(', ')}` : ''}.`
}
