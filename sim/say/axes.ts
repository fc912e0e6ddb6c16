/** Why the setting of a strategy means the effort that it says, or does not, on an axis. */
import type { StrategyFitness } from '../ask/actuators.ts'
import type { Scenario } from '../scenario/index.ts'
import { effortIn, JOB_WORDS, studyWords } from './jobs.ts'
import type { Wording } from './wording.ts'

export function fitnessWhy(
  scenario: Pick<Scenario, 'job'>,
  { ground }: Pick<StrategyFitness, 'ground'>,
  words: Wording,
): string {
  const say = effortIn(scenario, words)
  const { effort } = studyWords(scenario.job)
  const hidden = (share: number) => `Friction may take or add ${words.ratio(share)} of the wanted ${effort}`
  switch (ground.kind) {
    case 'fixed current':
      return 'In open loop the current is fixed, so it tells nothing.'
    case 'stalled rotor':
      return `Stalled in open loop the rotor falls behind its field, and the ${effort} pulsates.`
    case 'hidden':
      return `${hidden(ground.share)}, and the current does not show it.`
    case 'readable':
      return `${hidden(ground.share)}.`
    case 'impact above wanted':
      return `The impact alone, ${say(ground.impact)}, is above the wanted ${say(ground.wanted)} before the stop can act.`
    case 'impact below wanted':
      return `${hidden(ground.share)}. The impact, ${say(ground.impact)}, stays below the wanted ${effort}; the stop holds a position, not a ${effort}.`
    case 'too weak':
      return `The continuous ${effort}, ${say(ground.continuous)}, is below the wanted ${say(ground.wanted)}.`
    case 'impact damages':
      return `The impact alone, ${say(ground.impact)}, is above the ${JOB_WORDS[scenario.job].axes.limit} of ${say(ground.limit)}, whatever the clamp.`
    case 'gauge and give':
      return 'The gauge feels the contact whatever friction does, and the axis can give way.'
    case 'gauge and lock':
      return 'The gauge feels what the current cannot; the transmission keeps the position in between.'
  }
}
