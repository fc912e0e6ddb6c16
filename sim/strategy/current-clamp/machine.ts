import { State } from '../../core/block.ts'
import { Follower } from '../follower.ts'
import { Machine } from '../machine.ts'

class ClampState extends State {
  /** The clamp limits from now on. */
  limiting: f64 = 0
}

/**
 * Follows the profile into the part with the position loop's output limited, from a set opening on; in contact the loop saturates
 * and the axis presses with the limit, whatever the position.
 */
export class CurrentClamp extends Machine {
  /** Clamp current, and current limit on the way before [A]; travel from which on the clamp limits [m]. */
  limit: f64 = 0
  limitBefore: f64 = 0
  from: f64 = 0
  readonly follower: Follower = new Follower()
  readonly clamp: ClampState = new ClampState()

  begin(travel: f64, time: f64): void {
    this.follower.begin(travel, time)
    this.clamp.limiting = 0
    this.state.target = this.follower.course.position()
    this.state.wantedSpeed = 0
    this.state.engaged = NaN
    this.limited()
  }

  tick(time: f64, position: f64, _force: f64): f64 {
    const s = this.state
    const course = this.follower.course
    course.at(time)
    s.target = course.position()
    s.wantedSpeed = course.profile.speed
    if (position >= this.from) {
      this.clamp.limiting = 1
      this.follower.loop.limit = this.limit
    }
    const command: f64 = this.follower.follow(position)
    if (this.follower.saturated() <= 0 || course.profile.acceleration > 0) s.engaged = NaN
    else if (isNaN(s.engaged)) s.engaged = time
    return command
  }

  private limited(): void {
    const before: bool = this.from > 0 && this.clamp.limiting === 0
    this.follower.loop.limit = before ? this.limitBefore : this.limit
  }

  saturated(): f64 {
    return this.follower.saturated()
  }

  measuredSpeed(): f64 {
    return this.follower.measuredSpeed()
  }

  settle(): void {
    this.follower.course.settle()
    this.limited()
  }
}
