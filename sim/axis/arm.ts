/**
 * The arm that carries the axis: jerk-limited moves from rest to rest, half of the time speeding up, half slowing down,
 * each half a trapezoid of acceleration. Also gravity, so that it hands out all that pulls on a body in the gripper's frame.
 */
import { Block, State } from '../core/block.ts'
import { item, type Numbers, numbers, whole } from '../core/native.ts'

/** Standard acceleration of gravity [m/s²], ISO 80000-3. */
export const GRAVITY: f64 = 9.80665

/** A move as the arm holds it: start [s], direction, acceleration [m/s²], duration [s], jerk [m/s³]. */
export const MOVE_SIZE: i32 = 5
export const ALONG: f64 = 0
export const ACROSS: f64 = 1
export const UP: f64 = 2

/** Acceleration [m/s²] of a move, `time` [s] after its start. */
export function moveAcceleration(time: f64, acceleration: f64, duration: f64, jerk: f64): f64 {
  const half: f64 = duration / 2
  if (time <= 0 || time >= duration) return 0
  const within: f64 = time < half ? time : time - half
  const size: f64 = Math.abs(acceleration)
  const peak: f64 = Math.min(size, (jerk * half) / 2)
  const rise: f64 = jerk * Math.min(within, half - within)
  const value: f64 = rise < peak ? rise : peak
  const forwards: bool = time < half
  return forwards === acceleration > 0 ? value : -value
}

class ArmState extends State {
  /** Pull on a body in the gripper's frame [m/s²]: along the grip axis (closing positive), down and sideways in the pad plane. */
  along: f64 = 0
  down: f64 = 0
  side: f64 = 0
  moving: f64 = 0
}

export class Arm extends Block {
  /** Moves one behind the other, and how many there are. */
  moves: Numbers = numbers(0)
  count: f64 = 0
  /** [m/s²] */
  gravityAlong: f64 = 0
  gravityDown: f64 = 0
  /** The state holds for any time between these [s]: no move touches them. */
  private calmFrom: f64 = Infinity
  private calmUntil: f64 = Infinity
  readonly state: ArmState = new ArmState()

  /** One more move, where there is room for it; those that have ended by its start are forgotten. */
  add(start: f64, direction: f64, acceleration: f64, duration: f64, jerk: f64): void {
    let kept: i32 = 0
    const count: i32 = whole(this.count)
    for (let n: i32 = 0; n < count; n++) {
      const ends: f64 = item(this.moves, MOVE_SIZE * n) + item(this.moves, MOVE_SIZE * n + 3)
      if (ends > start) this.put(kept++, n)
    }
    const from: i32 = MOVE_SIZE * kept
    this.moves[from] = start
    this.moves[from + 1] = direction
    this.moves[from + 2] = acceleration
    this.moves[from + 3] = duration
    this.moves[from + 4] = jerk
    this.count = kept + 1
    this.settle()
  }

  /** After a change of constants or of state from outside. */
  settle(): void {
    this.calmFrom = Infinity
  }

  private put(to: i32, from: i32): void {
    for (let k: i32 = 0; k < MOVE_SIZE; k++) this.moves[MOVE_SIZE * to + k] = item(this.moves, MOVE_SIZE * from + k)
  }

  at(t: f64): void {
    if (t >= this.calmFrom && t < this.calmUntil) return
    this.pulled(t)
    this.calmFrom = this.state.moving > 0 ? Infinity : t
  }

  private pulled(t: f64): void {
    let along: f64 = 0
    let across: f64 = 0
    let up: f64 = 0
    const s = this.state
    s.moving = 0
    this.calmUntil = Infinity
    const count: i32 = whole(this.count)
    for (let n: i32 = 0; n < count; n++) {
      const start: f64 = item(this.moves, MOVE_SIZE * n)
      const duration: f64 = item(this.moves, MOVE_SIZE * n + 3)
      if (t < start && start < this.calmUntil) this.calmUntil = start
      if (t < start || t > start + duration) continue
      s.moving = 1
      const a: f64 = moveAcceleration(
        t - start,
        item(this.moves, MOVE_SIZE * n + 2),
        duration,
        item(this.moves, MOVE_SIZE * n + 4),
      )
      const direction: f64 = item(this.moves, MOVE_SIZE * n + 1)
      if (direction === ALONG) along += a
      else if (direction === ACROSS) across += a
      else up += a
    }
    s.side = -across
    if (this.gravityAlong > 0) {
      s.along = this.gravityAlong + up - along // gravity points where the driven jaw closes; up is against it
      s.down = 0
    } else {
      s.along = -along
      s.down = this.gravityDown + up
    }
  }
}
