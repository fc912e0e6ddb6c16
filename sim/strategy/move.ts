import { State } from '../core/block.ts'
import { Follower } from './follower.ts'
import { Machine } from './machine.ts'

class MoveState extends State {
  /** Where it ends [m]. */
  end: f64 = 0
}

/** Moves the output to a travel and holds it there: opens the jaws on purpose, or keeps them where they stand. */
export class Move extends Machine {
  readonly follower: Follower = new Follower()
  readonly to: MoveState = new MoveState()

  begin(travel: f64, time: f64): void {
    this.follower.course.end = this.to.end
    this.follower.begin(travel, time)
    this.state.target = travel
    this.state.wantedSpeed = 0
  }

  tick(time: f64, position: f64, _force: f64): f64 {
    const course = this.follower.course
    course.at(time)
    this.state.target = course.position()
    this.state.wantedSpeed = course.profile.speed
    return this.follower.follow(position)
  }

  saturated(): f64 {
    return this.follower.saturated()
  }

  measuredSpeed(): f64 {
    return this.follower.measuredSpeed()
  }

  settle(): void {
    this.follower.course.end = this.to.end
    this.follower.course.settle()
  }
}
