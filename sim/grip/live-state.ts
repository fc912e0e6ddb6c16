/** What a plant that runs on says of itself, and the move that shakes it. */
import type { ArmMove, Scenario } from '../scenario/index.ts'
import type { Fate } from './fate.ts'
import type { LiveFigures } from './live-figures.ts'

/** A shake in a direction in which the scenario's arm does not move; common practice for a quick robot, no source. */
const SHAKE = { acceleration: 10, duration: 0.2, jerk: 1000 }

export interface LiveState {
  time: number
  /** The newest sample, by position in CHANNELS. */
  now: Float64Array
  phase: 'holding' | 'closing' | 'opening'
  /** The strategy has halted its move or taken over. */
  engaged: boolean
  powered: boolean
  /** The part stands on its support. */
  supported: boolean
  /** When the part left the jaws, or stayed behind [s]; null: it did not. */
  lost: Fate['lost']
  /** The contact at which the part broke, and those at which it was marked. */
  crack: Fate['crack']
  marked: Fate['marked']
  /** The jaws are wide enough open to put in a new part. */
  clear: boolean
  /** Moves of the arm that may still be going on, in the time of this plant. */
  moves: readonly ArmMove[]
  figures: LiveFigures
  /** Where the plant left its rails, '' if it did not; then time stands still. */
  left: '' | 'numbers' | 'travel'
}

/** The move that `shake` makes: the scenario's own in that direction, if it has one. */
export function shakeOf({ arm }: Scenario, axis: ArmMove['axis']): ArmMove {
  return { ...(arm.moves.find((move) => move.axis === axis) ?? { ...SHAKE, axis }), start: 0 }
}
