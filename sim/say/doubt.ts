/** Why a verdict cannot be relied on, and what would settle it. */
import type { Doubt, RunResult } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'
import { jobWords } from './jobs.ts'
import type { Wording } from './wording.ts'

export function doubtSentence(scenario: Scenario, { doubt, step }: Pick<RunResult, 'doubt' | 'step'>, words: Wording) {
  if (!doubt) return ''
  if (!isTold(doubt))
    return `In doubt: whether the step of ${words.of({ unit: 's', shown: 'µs' }, step)} is what makes it leave its rails cannot be told, as a finer one takes too long.`
  const named = scenario.run.step !== null
  const remedy = named ? 'Leave the step out, and one is chosen for the stiffest mode.' : 'A finer step tells.'
  return `In doubt: ${ground(scenario, doubt, step, words)}. ${remedy}`
}

type Told = Doubt & { ground: Exclude<Doubt['ground'], 'untold'> }

const isTold = (doubt: Doubt): doubt is Told => doubt.ground !== 'untold'

function ground(scenario: Scenario, doubt: Told, step: number, words: Wording): string {
  const length = (seconds: number) => words.of({ unit: 's', shown: 'µs' }, seconds)
  switch (doubt.ground) {
    case 'verdict':
      return `by a step of ${length(doubt.step)} instead of ${length(step)} ${jobWords(scenario).state(doubt.verdict)}`
    case 'margin':
      return `a margin is smaller than what the step of ${length(step)} puts it off`
    case 'error':
      return `the step of ${length(step)} puts the figures off by about ${words.ratio(doubt.error ?? 0)}`
  }
}
