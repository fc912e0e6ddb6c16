/** Why the setting of a strategy means the force that it says, or does not, on an axis. */
import type { StrategyFitness } from '../ask/actuators.ts'
import type { Wording } from './wording.ts'

export function fitnessWhy({ ground }: Pick<StrategyFitness, 'ground'>, words: Wording): string {
  switch (ground.kind) {
    case 'fixed current':
      return 'In open loop the current is fixed, so it tells nothing.'
    case 'stalled rotor':
      return 'Stalled in open loop the rotor falls behind its field, and the force pulsates.'
    case 'hidden':
      return `${hidden(ground.share, words)}, and the current does not show it.`
    case 'readable':
      return `${hidden(ground.share, words)}.`
    case 'impact above wanted':
      return `The impact alone, ${words.force(ground.impact)}, is above the wanted ${words.force(ground.wanted)} before the stop can act.`
    case 'impact below wanted':
      return `${hidden(ground.share, words)}. The impact, ${words.force(ground.impact)}, stays below the wanted force; the stop holds a position, not a force.`
    case 'too weak':
      return `The continuous force, ${words.force(ground.continuous)}, is below the wanted ${words.force(ground.wanted)}.`
    case 'impact damages':
      return `The impact alone, ${words.force(ground.impact)}, is above the damage limit of ${words.force(ground.limit)}, whatever the clamp.`
    case 'gauge and give':
      return 'The gauge feels the contact whatever friction does, and the axis can give way.'
    case 'gauge and lock':
      return 'The gauge feels what the current cannot; the thread keeps the position in between.'
  }
}

const hidden = (share: number, words: Wording) => `Friction may take or add ${words.ratio(share)} of the wanted force`
