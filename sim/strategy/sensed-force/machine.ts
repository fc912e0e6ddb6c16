import { Course } from '../../control/course.ts'
import { deadBand } from '../../control/dead-band.ts'
import { FilteredDerivative } from '../../control/filters.ts'
import { ForcePid } from '../../control/force-pid.ts'
import { VelocityPi } from '../../control/velocity-pi.ts'
import { State } from '../../core/block.ts'
import { Machine } from '../machine.ts'

class PressState extends State {
  /** Servo samples until the force loop's next one. */
  due: f64 = 0
}

/**
 * Approaches at the profile's speed; once the gauge feels contact, force PID → dead band → velocity PI → current loop. The
 * same velocity loop serves both phases, so the hand-over changes a set speed and nothing else; speeding up towards the part
 * stays within the approach acceleration, slowing down is at once. Of a step motor in open loop the field carries the limit.
 */
export class SensedForce extends Machine {
  /** Wanted force and force that counts as contact [N], half width of the dead band [m/s]. */
  goal: f64 = 0
  contact: f64 = 0
  band: f64 = 0
  /** Gain of speed in a servo period [m/s], servo period [s], servo samples for each of the force loop. */
  rise: f64 = 0
  period: f64 = 0
  perForce: f64 = 1
  openLoop: f64 = 0
  readonly course: Course = new Course()
  readonly forceLoop: ForcePid = new ForcePid()
  readonly velocityLoop: VelocityPi = new VelocityPi()
  readonly speedometer: FilteredDerivative = new FilteredDerivative()
  readonly press: PressState = new PressState()

  begin(travel: f64, time: f64): void {
    this.course.setOut(travel, time)
    this.forceLoop.reset()
    this.velocityLoop.reset()
    this.speedometer.reset()
    this.press.due = 0
    this.state.target = this.course.position()
    this.state.wantedSpeed = 0
    this.state.engaged = NaN
  }

  tick(time: f64, position: f64, force: f64): f64 {
    const speed: f64 = this.speedometer.tick(position)
    if (isNaN(this.state.engaged)) this.approach(time, force)
    if (!isNaN(this.state.engaged)) this.pressOn(force)
    return this.openLoop > 0 ? this.velocityLoop.limit : this.velocityLoop.tick(this.state.wantedSpeed, speed)
  }

  private approach(time: f64, force: f64): void {
    const s = this.state
    this.course.at(time)
    s.target = this.course.position()
    s.wantedSpeed = this.course.profile.speed
    if (force > this.contact && this.course.profile.acceleration <= 0) s.engaged = time
  }

  private pressOn(force: f64): void {
    const s = this.state
    if (this.press.due <= 0) {
      this.press.due = this.perForce
      const wanted: f64 = deadBand(this.forceLoop.tick(this.goal, force), this.band)
      s.wantedSpeed = Math.min(wanted, Math.max(0, s.wantedSpeed) + this.rise * this.perForce)
    }
    this.press.due -= 1
    s.target += s.wantedSpeed * this.period
  }

  saturated(): f64 {
    return this.openLoop > 0 ? 0 : this.velocityLoop.state.saturated
  }

  measuredSpeed(): f64 {
    return this.speedometer.state.value
  }

  settle(): void {
    this.course.settle()
    if (this.press.due > this.perForce) this.press.due = this.perForce
  }
}
