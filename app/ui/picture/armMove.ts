/** What the arm does at an instant, for the arrow beside the gripper. */
import type { ArmMove } from '../../../sim/index.ts'

/**
 * Acceleration of a move [m/s²]: from rest to rest, half of the time speeding up and half slowing down, each half a trapezoid
 * whose flanks rise with the jerk.
 */
export function accelerationAt(move: ArmMove, time: number): number {
  const half = move.duration / 2
  const since = time - move.start
  if (since <= 0 || since >= move.duration) return 0
  const within = since < half ? since : since - half
  const size = Math.min(Math.abs(move.acceleration), move.jerk * Math.min(within, half - within))
  return since < half === move.acceleration > 0 ? size : -size
}

export type ArmVector = Record<ArmMove['axis'], number>

/** Sum of all moves, by direction [m/s²]. */
export function armAt(moves: ArmMove[], time: number): ArmVector {
  const sum: ArmVector = { across: 0, along: 0, up: 0 }
  for (const move of moves) sum[move.axis] += accelerationAt(move, time)
  return sum
}
