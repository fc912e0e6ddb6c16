import type { PositionPid } from '../control/position-pid.ts'
import type { Profile } from '../control/profile.ts'
import type { Scenario } from '../scenario/index.ts'
import { approachProfile, positionLoop } from './follow.ts'
import { currentFor, forceBand } from './newtons.ts'
import type { Measured, Strategy, StrategyKind } from './strategy.ts'

/**
 * Follows the profile into the part with the position loop's output limited; in contact the loop saturates and the axis
 * presses with the limit, whatever the position.
 */
class CurrentClamp implements Strategy {
  target = 0
  engaged = Number.NaN
  private readonly profile: Profile
  private readonly loop: PositionPid

  constructor(scenario: Scenario) {
    this.profile = approachProfile(scenario)
    this.loop = positionLoop(scenario, Math.min(scenario.strategies.currentClamp.limit, scenario.servo.currentLimit))
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
    const command = this.loop.tick(profile.position, profile.speed, profile.acceleration, position)
    if (this.loop.saturated <= 0 || profile.acceleration > 0) this.engaged = Number.NaN
    else if (Number.isNaN(this.engaged)) this.engaged = time
    return command
  }
}

export const currentClamp: StrategyKind = {
  id: 'current-clamp',
  label: 'Current clamp',
  summary: 'Follows the profile into the part with limited current, and presses with that limit.',
  setting: { path: 'strategies.currentClamp.limit', label: 'Clamp current', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) =>
    forceBand(scenario, Math.min(scenario.strategies.currentClamp.limit, scenario.servo.currentLimit)),
  create: (scenario) => new CurrentClamp(scenario),
}
