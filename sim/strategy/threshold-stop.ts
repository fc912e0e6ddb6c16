import { LowPass } from '../control/filters.ts'
import type { PositionPid } from '../control/position-pid.ts'
import type { Profile } from '../control/profile.ts'
import type { Scenario } from '../scenario/index.ts'
import { approachProfile, positionLoop } from './follow.ts'
import { currentFor, forceBand } from './newtons.ts'
import type { Measured, Strategy, StrategyKind } from './strategy.ts'

/**
 * Follows the profile; when the filtered current command has stood above the threshold for the confirm time (blanked while
 * the profile speeds up), halts the profile and holds the position commanded at that moment.
 */
class ThresholdStop implements Strategy {
  target = 0
  engaged = Number.NaN
  private readonly profile: Profile
  private readonly loop: PositionPid
  private readonly filter: LowPass
  private readonly threshold: number
  private readonly confirm: number
  private above = 0
  private readonly period: number

  constructor(scenario: Scenario) {
    const { threshold, confirmTime, filter } = scenario.strategies.thresholdStop
    this.profile = approachProfile(scenario)
    this.loop = positionLoop(scenario, scenario.servo.currentLimit)
    this.period = 1 / scenario.servo.rate
    this.filter = new LowPass({ timeConstant: filter, period: this.period })
    this.threshold = threshold
    this.confirm = confirmTime
  }

  get saturated() {
    return this.loop.saturated
  }

  get measuredSpeed() {
    return this.loop.measuredSpeed
  }

  tick({ time, position }: Measured): number {
    if (!Number.isNaN(this.engaged)) return this.loop.tick(this.target, 0, 0, position)
    const { profile } = this
    profile.at(time)
    this.target = profile.position
    const command = this.loop.tick(profile.position, profile.speed, profile.acceleration, position)
    const filtered = this.filter.tick(command)
    const blanked = profile.acceleration > 0
    this.above = !blanked && filtered > this.threshold ? this.above + this.period : 0
    if (this.above > this.confirm) this.engaged = time
    return command
  }
}

export const thresholdStop: StrategyKind = {
  id: 'threshold-stop',
  label: 'Threshold stop',
  summary: 'Halts the move when the current stands above a threshold, and holds that position.',
  setting: { path: 'strategies.thresholdStop.threshold', label: 'Threshold', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => forceBand(scenario, scenario.strategies.thresholdStop.threshold),
  create: (scenario) => new ThresholdStop(scenario),
}
