/** What the arm does at an instant, for the arrow beside the gripper. */
import { type ArmMove, accelerationOf } from '../../../sim/index.ts'

export type ArmVector = Record<ArmMove['axis'], number>

/** Sum of all moves, by direction [m/s²]. */
export function armAt(moves: ArmMove[], time: number): ArmVector {
  const sum: ArmVector = { across: 0, along: 0, up: 0 }
  for (const move of moves) sum[move.axis] += accelerationOf(move, time)
  return sum
}
