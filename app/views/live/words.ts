/** What the live plant does at the moment, in one sentence. */
import { hunts, type LiveState, type Scenario } from '../../../sim/index.ts'

/** Travel below which the jaws count as open [m]. */
const OPEN = 1e-4

export function sentenceOf(state: LiveState, travel: number, scenario: Scenario): string {
  if (state.left !== '') return 'The plant has left its rails and stands still: start anew.'
  return [driveWords(state, travel, scenario), partWords(state)].filter(Boolean).join(' ')
}

/** A loop with a part in its jaws that does not come to rest. */
export const isHunting = ({ phase, powered, lost, figures }: LiveState) =>
  phase === 'closing' && powered && lost === null && hunts(figures)

function driveWords(state: LiveState, travel: number, { events }: Scenario): string {
  if (!state.powered) return `No power: the windings are ${events.powerLoss?.windings ?? 'open'}.`
  if (isHunting(state)) return 'Hunting: the loop does not come to rest.'
  switch (state.phase) {
    case 'opening':
      return travel > OPEN ? 'Opening.' : 'Open.'
    case 'holding':
      return travel > OPEN ? 'The jaws are kept where they stand.' : 'Open.'
    case 'closing':
      return state.engaged ? 'Gripping.' : 'Closing.'
  }
}

function partWords({ crack, lost, supported }: LiveState): string {
  const broken = crack ? 'broken part' : 'part'
  if (lost !== null) return `The ${broken} is no longer in the jaws.`
  return `The ${broken} ${supported ? 'stands on its support' : 'hangs in the jaws'}.`
}
