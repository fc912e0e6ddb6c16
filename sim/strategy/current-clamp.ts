import type { FieldLoop } from '../control/field-loop.ts'
import type { PositionPid } from '../control/position-pid.ts'
import { contactsOf } from '../plant/axis.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Course, Start } from './course.ts'
import { approachProfile, clampLimit, handOver, positionLoop } from './follow.ts'
import { currentFor, forceBand } from './newtons.ts'
import type { Measured, Strategy, StrategyKind } from './strategy.ts'

/**
 * Follows the profile into the part with the position loop's output limited, from a set opening on; in contact the loop saturates and the axis
 * presses with the limit, whatever the position.
 */
class CurrentClamp implements Strategy {
  target: number
  wantedSpeed = 0
  engaged = Number.NaN
  private readonly profile: Course
  private readonly loop: PositionPid | FieldLoop
  private readonly limit: number
  /** Travel from which on the clamp limits [m]. */
  private readonly from: number

  constructor(scenario: Scenario, start?: Start) {
    this.profile = approachProfile(scenario, start)
    this.target = this.profile.position
    this.limit = clampLimit(scenario)
    this.from = (scenario.jaws.opening - scenario.strategies.currentClamp.from) / contactsOf(scenario)
    this.loop = positionLoop(scenario, this.from > 0 ? scenario.servo.currentLimit : this.limit)
  }

  get saturated() {
    return this.loop.saturated
  }

  get measuredSpeed() {
    return this.loop.measuredSpeed
  }

  tick({ time, position }: Measured): number {
    const { profile } = this
    profile.at(time)
    this.target = profile.position
    this.wantedSpeed = profile.speed
    if (position >= this.from) this.loop.limit = this.limit
    const command = this.loop.tick(profile.position, profile.speed, profile.acceleration, position)
    if (this.loop.saturated <= 0 || profile.acceleration > 0) this.engaged = Number.NaN
    else if (Number.isNaN(this.engaged)) this.engaged = time
    return command
  }

  take(previous: Strategy): void {
    if (!(previous instanceof CurrentClamp)) return
    this.profile.take(previous.profile)
    this.target = previous.target
    this.wantedSpeed = previous.wantedSpeed
    this.engaged = previous.engaged
    if (previous.loop.limit === previous.limit) this.loop.limit = this.limit
    handOver(previous.loop, this.loop)
  }
}

export const currentClamp: StrategyKind = {
  id: 'current-clamp',
  label: 'Current clamp',
  summary: 'Follows the profile into the part with limited current, and presses with that limit.',
  sensed: false,
  setting: { path: 'strategies.currentClamp.limit', label: 'Clamp current', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => forceBand(scenario, clampLimit(scenario)),
  create: (scenario, start) => new CurrentClamp(scenario, start),
}
