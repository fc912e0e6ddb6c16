/** Why a verdict cannot be relied on, and what would settle it. */
import type { Doubt, GripResult } from '../job/grip/result.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Wording } from './wording.ts'

export function doubtSentence({ run }: Scenario, { doubt, step }: Pick<GripResult, 'doubt' | 'step'>, words: Wording) {
  if (!doubt) return ''
  const named = run.step !== null
  const remedy = named ? 'Leave the step out, and one is chosen for the stiffest mode.' : 'A finer step tells.'
  return `In doubt: ${ground(doubt, step, words)}. ${remedy}`
}

function ground(doubt: Doubt, step: number, words: Wording): string {
  const length = (seconds: number) => words.of({ unit: 's', shown: 'µs' }, seconds)
  switch (doubt.ground) {
    case 'verdict':
      return `by a step of ${length(doubt.step)} instead of ${length(step)} the part is ${STATES[doubt.verdict]}`
    case 'margin':
      return `a margin is smaller than what the step of ${length(step)} puts it off`
    case 'error':
      return `the step of ${length(step)} puts the figures off by about ${words.ratio(doubt.error ?? 0)}`
  }
}

/** What a verdict says of the part. */
const STATES: Record<GripResult['verdict'], string> = {
  held: 'held',
  slipped: 'slipping',
  loose: 'loose',
  dropped: 'dropped',
  marked: 'marked',
  crushed: 'crushed',
  missed: 'missed',
  unstable: 'not judged, as a loop is unstable',
}
