/** What a scenario asks of its figures, and what became of it: a sentence each. */
import { METRICS } from '../job/grip/metrics.ts'
import type { GripResult, Requirement } from '../job/grip/result.ts'
import type { Wording } from './wording.ts'

const METRIC = new Map(METRICS.map((metric) => [metric.id, metric]))

/** "at least 50 %" */
export function boundText({ figure, bound, limit }: Pick<Requirement, 'figure' | 'bound' | 'limit'>, words: Wording) {
  return `at ${bound} ${words.of(METRIC.get(figure)!, limit)}`
}

/** "Hold margin 31 %, at least 50 % asked." */
export function requirementSentence(requirement: Requirement, words: Wording): string {
  const { figure, value } = requirement
  const metric = METRIC.get(figure)!
  const asked = `${boundText(requirement, words)} asked`
  if (value === null) return `${metric.label}: there is none, ${asked}.`
  if (!Number.isFinite(value)) return `${metric.label} without limit, ${asked}.`
  return `${metric.label} ${words.of(metric, value)}, ${asked}.`
}

/** One sentence a requirement that is not met. */
export const missedSentences = ({ requirements }: Pick<GripResult, 'requirements'>, words: Wording): string[] =>
  requirements.filter(({ met }) => !met).map((requirement) => requirementSentence(requirement, words))
