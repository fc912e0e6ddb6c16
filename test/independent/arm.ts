/** What gravity and the arm pull on the part, in the frame of the gripper. */
import type { Input, Move } from './input.ts'

export interface Pull {
  /** Along the grip, in the closing direction [m/s²]. */
  along: number
  /** In the plane of the pads [m/s²]. */
  down: number
  across: number
}

/** Acceleration of a move at a time [m/s²]: speeds up for half of its duration, slows down for the other. */
export function accelerationOf({ start, acceleration, duration, jerk }: Move, time: number): number {
  const half = duration / 2
  const since = time - start
  if (since <= 0 || since >= duration) return 0
  const within = since < half ? since : since - half
  const size = Math.min(Math.abs(acceleration), (jerk * half) / 2, jerk * within, jerk * (half - within))
  return Math.sign(acceleration) * (since < half ? size : -size)
}

export function pullAt({ down, along, upIsAlong, moves }: Input['arm'], time: number): Pull {
  const pull = { along, down, across: 0 }
  for (const move of moves) {
    const acceleration = accelerationOf(move, time)
    if (move.axis === 'along') pull.along -= acceleration
    else if (move.axis === 'across') pull.across -= acceleration
    else if (upIsAlong) pull.along += acceleration
    else pull.down += acceleration
  }
  return pull
}

/** When the support under the part goes [s]: as named, with the first move, or at two thirds of the run. */
export function liftOf({ arm, duration }: Pick<Input, 'arm' | 'duration'>): number {
  if (arm.lift !== null) return arm.lift
  return arm.moves.length > 0 ? Math.min(...arm.moves.map(({ start }) => start)) : (2 / 3) * duration
}
