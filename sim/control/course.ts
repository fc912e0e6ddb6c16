import { Block, State } from '../core/block.ts'
import { Profile } from './profile.ts'

class CourseState extends State {
  /** Where and when it set out [m], [s], and the time of the last question [s]. */
  from: f64 = 0
  begun: f64 = 0
  now: f64 = 0
  /** Where it was then [m]. */
  position: f64 = 0
  /** The way under which it set out. */
  end: f64 = 0
  speed: f64 = 1
  acceleration: f64 = 1
  jerk: f64 = 1
  creepSpeed: f64 = 1
  creepFrom: f64 = Infinity
}

/** A jerk-limited way of the output from a start to an end, asked at rising times. */
export class Course extends Block {
  /** Travel at the end [m]; limits [m/s], [m/s²], [m/s³]; creep speed [m/s] and the travel from which it holds [m]. */
  end: f64 = 0
  speed: f64 = 1
  acceleration: f64 = 1
  jerk: f64 = 1
  creepSpeed: f64 = 1
  creepFrom: f64 = Infinity
  readonly profile: Profile = new Profile()
  readonly state: CourseState = new CourseState()

  /** From `travel` [m], at rest, at `time` [s]. */
  setOut(travel: f64, time: f64): void {
    const s = this.state
    s.from = travel
    s.begun = time
    s.now = time
    s.end = this.end
    s.speed = this.speed
    s.acceleration = this.acceleration
    s.jerk = this.jerk
    s.creepSpeed = this.creepSpeed
    s.creepFrom = this.creepFrom
    this.planned()
    s.position = this.position()
  }

  position(): f64 {
    return this.state.from + this.profile.position
  }

  at(time: f64): void {
    this.state.now = time
    this.profile.at(time - this.state.begun)
    this.state.position = this.position()
  }

  /** Goes on; where the way was a different one, sets out anew, at rest, from where it is. */
  settle(): void {
    const s = this.state
    const same: bool =
      s.end === this.end &&
      s.speed === this.speed &&
      s.acceleration === this.acceleration &&
      s.jerk === this.jerk &&
      s.creepSpeed === this.creepSpeed &&
      s.creepFrom === this.creepFrom
    if (!same) {
      this.setOut(s.position, s.now)
      return
    }
    this.planned()
    this.profile.at(s.now - s.begun)
  }

  private planned(): void {
    const creepFrom: f64 = Math.max(0, this.creepFrom - this.state.from)
    this.profile.plan(this.end - this.state.from, this.speed, this.acceleration, this.jerk, this.creepSpeed, creepFrom)
  }
}
