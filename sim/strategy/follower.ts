import { Course } from '../control/course.ts'
import { PositionPid } from '../control/position-pid.ts'
import { Block } from '../core/block.ts'

/**
 * What every strategy without a gauge shares: a course followed by the position loop of the servo; of a step motor without an encoder
 * the field carries the limit, and the course alone turns it.
 */
export class Follower extends Block {
  openLoop: f64 = 0
  readonly course: Course = new Course()
  readonly loop: PositionPid = new PositionPid()

  begin(travel: f64, time: f64): void {
    this.course.setOut(travel, time)
    this.loop.reset()
  }

  /** Current [A] that takes the axis along the course; `position` [m] as measured. */
  follow(position: f64): f64 {
    const profile = this.course.profile
    return this.tick(this.course.position(), profile.speed, profile.acceleration, position)
  }

  /** Current [A] for a position, speed and acceleration wanted. */
  tick(target: f64, speed: f64, acceleration: f64, position: f64): f64 {
    return this.openLoop > 0 ? this.loop.limit : this.loop.tick(target, speed, acceleration, position)
  }

  saturated(): f64 {
    return this.openLoop > 0 ? 0 : this.loop.state.saturated
  }

  measuredSpeed(): f64 {
    return this.openLoop > 0 ? 0 : this.loop.measuredSpeed()
  }
}
