/**
 * What lets an axis follow a line: the servo is handed how far the roll is ahead of the line, and what the line asks of the motor by
 * itself is added to its command. The way of the line counts in turns of the roll by the radius that the drive reckons with, which
 * grows with the length that has gone by where the drive knows how thick the web is.
 */
import { Block, State } from '../core/block.ts'
import { Line } from './line.ts'

class FollowerState extends State {
  /** Length of line gone by so far [m], and the angle that the drive has made of it [rad]. */
  way: f64 = 0
  angle: f64 = 0
  /** Speed of the line in turns of the roll [rad/s], acceleration likewise [rad/s²]; radius reckoned with [m]. */
  speed: f64 = 0
  acceleration: f64 = 0
  radius: f64 = 1
}

export class LineFollower extends Block {
  /** 1 or 0. */
  on: f64 = 0
  /** How far the roll is ahead before the reference moves on with it [rad], and by what share of the line's speed it then may. */
  most: f64 = Infinity
  overspeed: f64 = 0
  /** How far the reference is ahead of the roll before it waits for it [rad]. */
  farthest: f64 = Infinity
  /** Radius at the start [m], and how much its square grows with each metre [m]. */
  radius: f64 = 1
  growth: f64 = 0
  /** Current for each rad/s², at the start and for each m⁴ of radius on top [A·s²], and for each rad/s [A·s]. */
  inertia: f64 = 0
  wound: f64 = 0
  losses: f64 = 0
  /** Of the command, either sign [A]. */
  limit: f64 = Infinity
  readonly line: Line = new Line()
  readonly state: FollowerState = new FollowerState()

  /**
   * How far a measured position [rad] is ahead of the line at `time` [s], where the machine wants it to be ahead by `target` [rad]. The
   * way of the line gives way to what a running web takes by being drawn, within bounds: a roll whose web has torn is not followed.
   */
  seen(time: f64, position: f64, target: f64): f64 {
    const s = this.state
    const now = this.line.state
    this.line.at(time)
    s.radius = this.growth > 0 ? Math.sqrt(this.radius * this.radius + this.growth * now.way) : this.radius
    const turn: f64 = (now.way - s.way) / s.radius
    const before: f64 = position - s.angle - turn
    s.way = now.way
    s.angle += turn
    if (before > this.most) s.angle += Math.min(before - this.most, this.overspeed * turn)
    else if (target - before > this.farthest) s.angle -= Math.min(target - before - this.farthest, turn)
    s.speed = now.speed / s.radius
    s.acceleration = now.acceleration / s.radius
    return position - s.angle
  }

  /** Follows anew from `time` [s] on: what has gone by meanwhile was not seen, and is not made up for. */
  resume(time: f64): void {
    this.line.at(time)
    this.state.way = this.line.state.way
  }

  /** The command [A] with what the line asks for: a larger roll takes as much more for the same pull. */
  carried(command: f64): f64 {
    const s = this.state
    const square: f64 = s.radius * s.radius
    const start: f64 = this.radius * this.radius
    const inertia: f64 = this.inertia + this.wound * (square * square - start * start)
    const wanted: f64 = command * (s.radius / this.radius) + inertia * s.acceleration + this.losses * s.speed
    return Math.max(-this.limit, Math.min(this.limit, wanted))
  }
}
