/**
 * What a job says of a bench that runs on: what a person can do to the work by hand, what happens to it, and which values of the file
 * make it other work. `sim/run/live.ts` carries it out, `sim/say` has the words.
 */
import type { Arm } from '../axis/arm.ts'
import type { Load } from '../axis/load.ts'
import type { LineFollower } from '../control/line-follower.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'

/** The plant in somebody's hands, as it stands between two periods. */
export interface LiveHands<Worked extends Load = Load> {
  load: Worked
  arm: Arm
  follower: LineFollower
  scenario: Scenario
  /** [s] */
  time: number
  /** Travel of the output, and of the motor side, which the drive goes by [m or rad]. */
  travel: number
  motorTravel: number
  /** A move of the arm is going on. */
  shaken: boolean
}

/**
 * An act has an id and whether it makes sense just now; beside that the drive has power where it takes some. `out`: the strategy sets out
 * from where the output is; `back`: the output goes back to a travel; `work`: something is done to the work alone; `fresh`: new work, the
 * output stays where it is; `anew`: new work on a machine at rest, as warm as it was.
 */
export interface LiveAct<Worked extends Load = Load> {
  id: string
  kind: 'out' | 'back' | 'work' | 'fresh' | 'anew'
  /** Left out: always. */
  can?(at: LiveHands<Worked>): boolean
  /** What it does to the work; of new work, to that. */
  act?(at: LiveHands<Worked>): void
  /** Where the output goes back to [m or rad], 0 if left out. */
  to?(at: LiveHands<Worked>): number
  /** Move of the arm that it makes. */
  shake?: ArmMove['axis']
}

/** Something that happens to the work: when it did [s], NaN while it has not. */
export interface LiveEvent<Worked extends Load = Load> {
  id: string
  /** The work is hurt. */
  damage: boolean
  at(load: Worked, time: number): number
}

export interface JobLive<Worked extends Load = Load> {
  /** Acts that stand together, in the order of their buttons; the power comes after them. */
  groups: readonly { id: string; acts: readonly LiveAct<Worked>[] }[]
  /** What is done first where another strategy takes over from one that works, by its id; null: the output is kept where it is. */
  before: string | null
  events: readonly LiveEvent<Worked>[]
  /** What else is to be known of the work, yes or no. */
  facts: Readonly<Record<string, (load: Worked) => boolean>>
  /** Whether a drive still has something to hold on to: what swings without it is no loop that hunts. */
  inHand(load: Worked): boolean
  /** Values of the file that stay what they are while the plant goes on: another one is another machine or other work. */
  fixed(scenario: Scenario): readonly unknown[]
  /** Nothing happens by itself. */
  still(load: Worked, follower: LineFollower): void
  /** Hands on what goes on beside the state. */
  carry?(from: LiveHands<Worked>, to: LiveHands<Worked>): void
}

/** Over the last half second, and the highest effort since the output set out. */
export interface LiveFigures {
  /** Mean effort and its rms about the mean [N or N·m], mean current [A], sign changes of the motor side's speed [1/s]. */
  effort: number
  ripple: number
  current: number
  reversals: number
  /** Highest effort since the output last set out [N or N·m]. */
  peak: number
}

/** A bench that runs on, as people see it. */
export interface LiveState {
  time: number
  /** The newest sample, by position in the channels of the job. */
  now: Float64Array
  /** The output is kept where it stands, the strategy works, or the output goes back. */
  phase: 'holding' | 'working' | 'returning'
  /** The strategy has halted its move or taken over. */
  engaged: boolean
  powered: boolean
  /** Ids of the acts that make sense now. */
  able: readonly string[]
  /** By id, when it happened to the work [s]; null: it did not. */
  events: Readonly<Record<string, number | null>>
  facts: Readonly<Record<string, boolean>>
  /** The drive still has something to hold on to. */
  inHand: boolean
  /** Moves of the arm that may still be going on, in the time of this plant. */
  moves: readonly ArmMove[]
  figures: LiveFigures
  /** Where the plant left its rails, '' if it did not; then time stands still. */
  left: '' | 'numbers' | 'travel'
}

/** So many changes of direction a second, with so much ripple on the effort, are a hunting loop; common practice, no source. */
const HUNTING = { reversals: 8, ripple: 0.02 }

export const hunts = ({ effort, ripple, reversals }: LiveFigures) =>
  reversals >= HUNTING.reversals && ripple >= HUNTING.ripple * effort && effort > 0

/** A loop that works on something and does not come to rest. */
export const isHunting = ({ phase, powered, inHand, figures }: LiveState) =>
  phase === 'working' && powered && inHand && hunts(figures)
