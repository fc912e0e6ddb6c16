/** The verdict on a grip, and why, in one sentence: a number, a limit, a time. */
import type { GripResult, Metrics } from '../job/grip/result.ts'
import type { Scenario } from '../scenario/index.ts'
import { doubtSentence } from './doubt.ts'
import { overloadSentences } from './ratings.ts'
import { missedSentences } from './requirements.ts'
import type { Wording } from './wording.ts'

export type Judged = Pick<GripResult, 'verdict' | 'metrics' | 'events' | 'cause'>

/** What stands beside a verdict; a run that is told of for another reason leaves it out. */
type Beside = Pick<GripResult, 'overloads' | 'requirements' | 'doubt' | 'step'>

const CAUSES: Record<GripResult['cause'], string> = {
  '': '',
  numbers: 'the numbers are no longer finite',
  travel: 'the jaw has left its travel',
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
    ...missedSentences({ requirements }, words),
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
      if (events.met !== null) return `The jaws meet at ${at(events.met)}: nothing of the part is left between them.`
      return `Cracks at ${at(events.crack)}: ${words.force(peak)} on a ${words.force(part.crackForce ?? 0)} part.`
    case 'dropped':
      return `Lost at ${at(events.drop)}: slides past the ${words.length(jaws.padLength)} pad${shortfall(metrics, words)}.`
    case 'loose':
      return `Comes loose at ${at(events.loose)}: a contact opens while the part hangs${shortfall(metrics, words)}.`
    case 'slipped':
      return `${slid(metrics, words)} from ${at(events.slip)} on${shortfall(metrics, words)}.`
    case 'marked': {
      const dented = part.yieldForce !== undefined && peak > part.yieldForce
      const limit = Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)
      return `${dented ? 'Dented' : 'Marked'} at ${at(events.mark)}: up to ${words.force(peak)} on a ${words.force(limit)} limit.`
    }
    case 'held':
      return holding(metrics, words, pullsAlong(scenario))
  }
}

/** Turning is what it is mainly where the pads' centre hardly moves. */
function slid({ slipDistance, rotation }: Metrics, words: Wording): string {
  const way = `Slides ${words.length(slipDistance ?? 0)}`
  return rotation ? `${way} and turns by ${words.angle(rotation)}` : way
}

/** What settled beside what the hardest moment asks for, if that were to last. */
function shortfall({ settledForce, requiredForce, minForceInMove }: Metrics, words: Wording): string {
  if (requiredForce === null || !settledForce) return '' // 0: the part had gone before the force could be taken
  const [settled, required] = [words.force(settledForce), words.force(requiredForce)]
  if (settledForce < requiredForce) return `, with ${settled} where ${required} hold`
  const least = minForceInMove ?? settledForce
  return least < requiredForce
    ? `, as the ${settled} that it settled at fall to ${words.force(least)} in the arm’s move, where ${required} hold`
    : `, though it settled at ${settled} and a slow pull takes ${required}: the force falls later, or the part swings on its pads`
}

const pullsAlong = ({ arm }: Scenario) => arm.gravity === 'along' || arm.moves.some(({ axis }) => axis === 'along')

function holding(
  { settledForce, requiredForce, holdMargin, damageMargin }: Metrics,
  words: Wording,
  along: boolean,
): string {
  const until = along ? 'before it slides or a contact opens' : 'before it slides'
  const spare = [
    holdMargin === null ? '' : `${words.ratio(holdMargin)} to spare ${until}`,
    damageMargin === null ? '' : `${words.ratio(damageMargin)} before damage`,
  ].filter((text) => text !== '')
  return `${needs(settledForce, requiredForce, words)}${spare.length > 0 ? `; ${spare.join(', ')}` : ''}.`
}

function needs(settled: number | null, required: number | null, words: Wording): string {
  if (settled === null) return required === null ? 'Holds' : `Holds where ${words.force(required)} are needed`
  const holds = `Holds with ${words.force(settled)}`
  if (required === null) return holds
  if (settled >= required) return `${holds} where ${words.force(required)} are needed`
  return `${holds}, though ${words.force(required)} are needed for a pull that lasts: the force has grown by then, or the pads soften the pull`
}
