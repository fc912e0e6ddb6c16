import type { FieldLoop } from '../control/field-loop.ts'
import type { PositionPid } from '../control/position-pid.ts'
import { Profile } from '../control/profile.ts'
import type { Scenario } from '../scenario/index.ts'
import { positionLoop } from './follow.ts'
import type { Measured, Strategy } from './strategy.ts'

/** Opens the jaws again on purpose: from where they are back to the start, with the speeds of the approach. */
export class Opening implements Strategy {
  target: number
  wantedSpeed = 0
  readonly engaged = Number.NaN
  private readonly profile: Profile
  private readonly loop: PositionPid | FieldLoop
  private readonly from: number
  private readonly start: number

  /** `travel` [m] and `time` [s] at which the opening begins. */
  constructor(scenario: Scenario, travel: number, time: number) {
    const { speed, acceleration, jerk } = scenario.approach
    this.profile = new Profile({ distance: -Math.max(travel, 0), speed, acceleration, jerk })
    this.loop = positionLoop(scenario, scenario.servo.currentLimit)
    this.from = Math.max(travel, 0)
    this.target = this.from
    this.start = time
  }

  get saturated() {
    return this.loop.saturated
  }

  get measuredSpeed() {
    return this.loop.measuredSpeed
  }

  tick({ time, position }: Measured): number {
    this.profile.at(time - this.start)
    this.target = this.from + this.profile.position
    this.wantedSpeed = this.profile.speed
    return this.loop.tick(this.target, this.profile.speed, this.profile.acceleration, position)
  }
}
