import { LowPass } from '../../control/filters.ts'
import { State } from '../../core/block.ts'
import { Follower } from '../follower.ts'
import { Machine } from '../machine.ts'

class StopState extends State {
  /** For how long the current has stood above the threshold [s]. */
  above: f64 = 0
}

/**
 * Follows the profile; when the filtered current command has stood above the threshold for the confirm time (blanked while
 * the profile speeds up), halts the profile and holds the position commanded at that moment, or, if so set, presses on with
 * the clamp current.
 */
export class ThresholdStop extends Machine {
  /** [A], [s], servo period [s], current limit on the way [A] */
  threshold: f64 = 0
  confirm: f64 = 0
  period: f64 = 0
  limit: f64 = 0
  /** Current with which it presses after the stop [A], or NaN to hold the position. */
  press: f64 = NaN
  readonly follower: Follower = new Follower()
  readonly filter: LowPass = new LowPass()
  readonly stop: StopState = new StopState()

  begin(travel: f64, time: f64): void {
    this.follower.begin(travel, time)
    this.follower.loop.limit = this.limit
    this.filter.reset()
    this.stop.above = 0
    this.state.target = this.follower.course.position()
    this.state.wantedSpeed = 0
    this.state.engaged = NaN
  }

  tick(time: f64, position: f64, _force: f64): f64 {
    const s = this.state
    if (!isNaN(s.engaged)) return this.follower.tick(s.target, 0, 0, position)
    const course = this.follower.course
    course.at(time)
    s.target = course.position()
    const command: f64 = this.follower.follow(position)
    const filtered: f64 = this.filter.tick(command)
    s.wantedSpeed = course.profile.speed
    const blanked: bool = course.profile.acceleration > 0
    this.stop.above = !blanked && filtered > this.threshold ? this.stop.above + this.period : 0
    if (this.stop.above > this.confirm) this.halt(time)
    return command
  }

  private halt(time: f64): void {
    this.state.engaged = time
    this.state.wantedSpeed = 0
    this.pressOn()
  }

  private pressOn(): void {
    if (isNaN(this.press)) return
    this.state.target = this.follower.course.end
    this.follower.loop.limit = this.press
  }

  saturated(): f64 {
    return this.follower.saturated()
  }

  measuredSpeed(): f64 {
    return this.follower.measuredSpeed()
  }

  settle(): void {
    this.follower.course.settle()
    this.follower.loop.limit = this.limit
    if (!isNaN(this.state.engaged)) this.pressOn()
  }
}
