/** What a scenario asks of its figures, and what became of it: a sentence each. */
import { jobOf } from '../job/index.ts'
import type { Figure, RunResult } from '../job/job.ts'
import type { Requirement } from '../job/requirements.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Wording } from './wording.ts'

/** "at least 50 %" */
export const boundText = (
  figure: Pick<Figure, 'unit' | 'shown'>,
  bound: Requirement['bound'],
  limit: number,
  words: Wording,
) => `at ${bound} ${words.of(figure, limit)}`

/** "Hold margin 31 %, at least 50 % asked." */
function sentenceOf(
  figure: Pick<Figure, 'label' | 'unit' | 'shown'>,
  requirement: Requirement,
  words: Wording,
): string {
  const { value, bound, limit } = requirement
  const asked = `${boundText(figure, bound, limit, words)} asked`
  if (value === null) return `${figure.label}: there is none, ${asked}.`
  if (!Number.isFinite(value)) return `${figure.label} without limit, ${asked}.`
  return `${figure.label} ${words.of(figure, value)}, ${asked}.`
}

/** One sentence a requirement that is not met. */
export function missedSentences(scenario: Scenario, { requirements }: Pick<RunResult, 'requirements'>, words: Wording) {
  const { figures } = jobOf(scenario)
  const missed = requirements.filter(({ met }) => !met)
  return missed.map((requirement) =>
    sentenceOf(figures.find(({ id }) => id === requirement.figure)!, requirement, words),
  )
}
