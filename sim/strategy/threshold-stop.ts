import type { FieldLoop } from '../control/field-loop.ts'
import { LowPass } from '../control/filters.ts'
import type { PositionPid } from '../control/position-pid.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Course, Start } from './course.ts'
import { approachProfile, clampLimit, handOver, positionLoop } from './follow.ts'
import { currentFor, forceBand } from './newtons.ts'
import type { Measured, Strategy, StrategyKind } from './strategy.ts'

/**
 * Follows the profile; when the filtered current command has stood above the threshold for the confirm time (blanked while
 * the profile speeds up), halts the profile and holds the position commanded at that moment, or, if so set, presses on with
 * the clamp current.
 */
class ThresholdStop implements Strategy {
  target: number
  wantedSpeed = 0
  engaged = Number.NaN
  private readonly profile: Course
  private readonly loop: PositionPid | FieldLoop
  private readonly filter: LowPass
  private readonly threshold: number
  private readonly confirm: number
  /** Current [A] with which it presses after the stop, or NaN to hold the position. */
  private readonly press: number
  private above = 0
  private readonly period: number

  constructor(scenario: Scenario, start?: Start) {
    const { threshold, confirmTime, filter, afterwards } = scenario.strategies.thresholdStop
    this.profile = approachProfile(scenario, start)
    this.target = this.profile.position
    this.press = afterwards === 'press' ? clampLimit(scenario) : Number.NaN
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
    this.wantedSpeed = profile.speed
    const blanked = profile.acceleration > 0
    this.above = !blanked && filtered > this.threshold ? this.above + this.period : 0
    if (this.above > this.confirm) this.stop(time)
    return command
  }

  private stop(time: number): void {
    this.engaged = time
    this.wantedSpeed = 0
    this.pressOn()
  }

  private pressOn(): void {
    if (Number.isNaN(this.press)) return
    this.target = this.profile.way.end
    this.loop.limit = this.press
  }

  take(previous: Strategy): void {
    if (!(previous instanceof ThresholdStop)) return
    this.profile.take(previous.profile)
    this.filter.take(previous.filter)
    this.above = previous.above
    this.target = previous.target
    this.wantedSpeed = previous.wantedSpeed
    this.engaged = previous.engaged
    handOver(previous.loop, this.loop)
    if (!Number.isNaN(this.engaged)) this.pressOn()
  }
}

export const thresholdStop: StrategyKind = {
  id: 'threshold-stop',
  label: 'Threshold stop',
  summary: 'Halts the move when the current stands above a threshold, and holds that position.',
  sensed: false,
  setting: { path: 'strategies.thresholdStop.threshold', label: 'Threshold', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => {
    const { threshold, afterwards } = scenario.strategies.thresholdStop
    return forceBand(scenario, afterwards === 'press' ? clampLimit(scenario) : threshold)
  },
  create: (scenario, start) => new ThresholdStop(scenario, start),
}
