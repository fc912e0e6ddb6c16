/** What a bench that runs on says of itself, and the move that shakes it. */

import { MOVE_SIZE } from '../axis/arm.ts'
import { DIRECTIONS } from '../axis/fill-arm.ts'
import type { Bench } from '../cycle/bench.ts'
import { NUMBERS, TRAVEL } from '../cycle/rails.ts'
import { travelToContact } from '../job/grip/geometry.ts'
import { GripLoad } from '../job/grip/load.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'

/** A shake in a direction in which the scenario's arm does not move; common practice for a quick robot, no source. */
const SHAKE = { acceleration: 10, duration: 0.2, jerk: 1000 }

/** So many changes of direction a second, with so much ripple on the force, are a hunting loop; common practice, no source. */
const HUNTING = { reversals: 8, ripple: 0.02 }

/** Over the last half second, and the highest force since the jaws set out. */
export interface LiveFigures {
  /** Mean force of the contacts and its rms about the mean [N], mean current [A], sign changes of the motor side's speed [1/s]. */
  force: number
  ripple: number
  current: number
  reversals: number
  /** Highest force at either contact since the jaws last set out [N]. */
  peak: number
}

export const hunts = ({ force, ripple, reversals }: LiveFigures) =>
  reversals >= HUNTING.reversals && ripple >= HUNTING.ripple * force && force > 0

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
  lost: number | null
  /** The contact at which the part broke, and those at which it was marked. */
  crack: 'near' | 'far' | null
  marked: { near: boolean; far: boolean }
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

/** `now` is the newest sample, a copy; the bench's arrays are as they stand. */
export function stateOf(scenario: Scenario, bench: Bench, now: Float64Array): LiveState {
  const { drive, load } = bench
  if (!(load instanceof GripLoad)) throw new TypeError('a live bench grips')
  const part = load.state
  return {
    time: bench.time(),
    now,
    phase: drive.state.opening > 0 ? 'opening' : drive.state.moving > 0 ? 'holding' : 'closing',
    engaged: !Number.isNaN(drive.machine().state.engaged),
    powered: drive.state.powered > 0,
    supported: part.hanging === 0 && part.out === 0,
    lost: Number.isNaN(part.lost) ? null : part.lost,
    crack: Number.isNaN(part.crackTime) ? null : part.crackFar > 0 ? 'far' : 'near',
    marked: { near: part.nearMarked > 0, far: part.farMarked > 0 },
    clear: bench.axis.state.travel <= travelToContact(scenario),
    moves: movesOf(bench),
    figures: figuresOf(bench),
    left: leftOf(bench),
  }
}

/** The moves of the arm as it holds them. */
export function movesOf({ arm }: Bench): ArmMove[] {
  const names = Object.entries(DIRECTIONS) as [ArmMove['axis'], number][]
  return Array.from({ length: arm.count }, (_, n) => {
    const [start = 0, direction, acceleration = 0, duration = 0, jerk = 0] = arm.moves.slice(MOVE_SIZE * n)
    const axis = names.find(([, number]) => number === direction)?.[0] ?? 'along'
    return { start, axis, acceleration, duration, jerk }
  })
}

/** From the sums over all blocks: samples, effort, its squares, current, changes of direction. */
function figuresOf({ latest }: Bench): LiveFigures {
  const count = Math.max(1, latest.total(0))
  const mean = latest.total(1) / count
  return {
    force: mean,
    ripple: Math.sqrt(Math.max(0, latest.total(2) / count - mean * mean)),
    current: latest.total(3) / count,
    reversals: latest.total(4) / (count * latest.period),
    peak: latest.state.peak,
  }
}

const leftOf = ({ rails }: Bench): LiveState['left'] =>
  rails.state.cause === NUMBERS ? 'numbers' : rails.state.cause === TRAVEL ? 'travel' : ''
