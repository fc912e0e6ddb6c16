/** The constants of the arm that carries an axis, from its part of the scenario. */
import { numbers } from '../core/native.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'
import { ACROSS, ALONG, Arm, GRAVITY, MOVE_SIZE, moveAcceleration, UP } from './arm.ts'

export const DIRECTIONS: Record<ArmMove['axis'], number> = { along: ALONG, across: ACROSS, up: UP }

export function armOf(arm: Scenario['arm']): Arm {
  const made = new Arm()
  fillArm(made, arm)
  return made
}

/** Acceleration of one move at time `t` [m/s²]. */
export const accelerationOf = ({ start, acceleration, duration, jerk }: ArmMove, t: number) =>
  moveAcceleration(t - start, acceleration, duration, jerk)

/** `room` is how many more moves may be added later. */
export function fillArm(arm: Arm, { moves, gravity }: Scenario['arm'], room = 0): void {
  arm.gravityAlong = gravity === 'along' ? GRAVITY : 0
  arm.gravityDown = gravity === 'across' ? GRAVITY : 0
  arm.count = moves.length
  arm.moves = numbers(MOVE_SIZE * (moves.length + room))
  moves.forEach((move, n) => {
    arm.moves.set([move.start, DIRECTIONS[move.axis], move.acceleration, move.duration, move.jerk], MOVE_SIZE * n)
  })
}
