/**
 * The arm that carries the gripper: jerk-limited moves from rest to rest, half of the time speeding up, half slowing down,
 * each half a trapezoid of acceleration. Also gravity, so that it hands out all that pulls on the part in the gripper's frame.
 */
import type { ArmMove, Scenario } from '../scenario/index.ts'

/** Standard acceleration of gravity [m/s²], ISO 80000-3. */
export const GRAVITY = 9.80665

/** Acceleration of one move at time t [m/s²]. */
export function moveAcceleration(move: ArmMove, t: number): number {
  const half = move.duration / 2
  const time = t - move.start
  if (time <= 0 || time >= move.duration) return 0
  const within = time < half ? time : time - half
  const size = Math.abs(move.acceleration)
  const peak = Math.min(size, (move.jerk * half) / 2)
  const rise = move.jerk * Math.min(within, half - within)
  const value = rise < peak ? rise : peak
  return time < half === move.acceleration > 0 ? value : -value
}

export class Arm {
  /** Pull on a body in the gripper's frame [m/s²]: along the grip axis (closing positive), down and sideways in the pad plane. */
  along = 0
  down = 0
  side = 0
  moving = false
  moves: readonly ArmMove[]
  private readonly gravity: Scenario['arm']['gravity']

  constructor(scenario: Scenario) {
    this.moves = scenario.arm.moves
    this.gravity = scenario.arm.gravity
  }

  /** One more move; those that have ended by its start are forgotten. */
  add(move: ArmMove): void {
    this.moves = [...this.moves.filter(({ start, duration }) => start + duration > move.start), move]
  }

  at(t: number): void {
    let along = 0
    let across = 0
    let up = 0
    this.moving = false
    for (const move of this.moves) {
      if (t < move.start || t > move.start + move.duration) continue
      this.moving = true
      const a = moveAcceleration(move, t)
      if (move.axis === 'along') along += a
      else if (move.axis === 'across') across += a
      else up += a
    }
    this.side = -across
    if (this.gravity === 'along') {
      this.along = GRAVITY + up - along // gravity points where the driven jaw closes; up is against it
      this.down = 0
    } else {
      this.along = -along
      this.down = (this.gravity === 'across' ? GRAVITY : 0) + up
    }
  }
}
