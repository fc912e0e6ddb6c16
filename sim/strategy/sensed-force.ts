import { deadBand } from '../control/dead-band.ts'
import { FieldLoop } from '../control/field-loop.ts'
import { FilteredDerivative } from '../control/filters.ts'
import { ForcePid } from '../control/force-pid.ts'
import { VelocityPi } from '../control/velocity-pi.ts'
import { isOpenLoop } from '../plant/commutation.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Course, Start } from './course.ts'
import { approachProfile } from './follow.ts'
import type { ForceBand, Measured, Strategy, StrategyKind } from './strategy.ts'

/**
 * Approaches at the profile's speed; once the gauge feels contact, force PID → dead band → velocity PI → current loop. The
 * same velocity loop serves both phases, so the hand-over changes a set speed and nothing else; speeding up towards the part
 * stays within the approach acceleration, slowing down is at once.
 */
class SensedForce implements Strategy {
  target: number
  wantedSpeed = 0
  engaged = Number.NaN
  private readonly profile: Course
  private readonly forceLoop: ForcePid
  private readonly velocityLoop: VelocityPi | FieldLoop
  private readonly speedometer: FilteredDerivative
  private readonly goal: number
  private readonly contact: number
  private readonly band: number
  private readonly rise: number
  private readonly perForce: number
  private readonly period: number
  private count = 0

  constructor(scenario: Scenario, start?: Start) {
    const { servo, sensors, approach } = scenario
    const { target, contactForce, rate, kp, ki, kd, deadband, speedLimit, velocity } = scenario.strategies.sensedForce
    const period = 1 / servo.rate
    this.profile = approachProfile(scenario, start)
    this.target = this.profile.position
    this.forceLoop = new ForcePid({
      kp,
      ki,
      kd,
      derivativeFilter: 1 / sensors.gauge.bandwidth,
      period: 1 / rate,
      limit: speedLimit,
    })
    this.velocityLoop = isOpenLoop(scenario)
      ? new FieldLoop(servo.currentLimit)
      : new VelocityPi({ ...velocity, period, limit: servo.currentLimit })
    this.period = period
    this.speedometer = new FilteredDerivative({ timeConstant: servo.speedFilter, period })
    this.goal = target
    this.contact = contactForce
    this.band = deadband
    this.rise = approach.acceleration * period
    this.perForce = Math.round(servo.rate / rate)
  }

  get saturated() {
    return this.velocityLoop.saturated
  }

  get measuredSpeed() {
    return this.speedometer.value
  }

  tick({ time, position, force }: Measured): number {
    const speed = this.speedometer.tick(position)
    if (Number.isNaN(this.engaged)) this.approach(time, force)
    if (!Number.isNaN(this.engaged)) this.press(force)
    return this.velocityLoop.tick(this.wantedSpeed, speed)
  }

  private approach(time: number, force: number): void {
    const { profile } = this
    profile.at(time)
    this.target = profile.position
    this.wantedSpeed = profile.speed
    if (force > this.contact && profile.acceleration <= 0) this.engaged = time
  }

  private press(force: number): void {
    if (this.count % this.perForce === 0) {
      const wanted = deadBand(this.forceLoop.tick(this.goal, force), this.band)
      this.wantedSpeed = Math.min(wanted, Math.max(0, this.wantedSpeed) + this.rise * this.perForce)
    }
    this.count++
    this.target += this.wantedSpeed * this.period
  }

  take(previous: Strategy): void {
    if (!(previous instanceof SensedForce)) return
    this.profile.take(previous.profile)
    this.forceLoop.take(previous.forceLoop)
    this.speedometer.take(previous.speedometer)
    this.count = previous.count
    this.target = previous.target
    this.wantedSpeed = previous.wantedSpeed
    this.engaged = previous.engaged
    const { velocityLoop } = this
    if (velocityLoop instanceof VelocityPi && previous.velocityLoop instanceof VelocityPi)
      velocityLoop.take(previous.velocityLoop)
  }
}

/**
 * Force that the target means: the gauge's own errors, and the dead band, inside which the axis stands still; with an
 * integral the band is left in the end, so it counts only where there is none.
 */
function sensedBand({ sensors, strategies }: Scenario): ForceBand {
  const { target, kp, ki, deadband } = strategies.sensedForce
  const { gainError, offset } = sensors.gauge
  const expected = Math.max(0, (target - offset) / (1 + gainError))
  const slack = ki === 0 && kp > 0 ? deadband / kp / (1 + gainError) : 0
  return { expected, least: Math.max(0, expected - slack), most: expected + slack }
}

export const sensedForce: StrategyKind = {
  id: 'sensed-force',
  label: 'Sensed force',
  summary: 'Feels contact with a gauge and closes a force loop around a velocity loop, with a dead band between.',
  sensed: true,
  setting: { path: 'strategies.sensedForce.target', label: 'Target force', unit: 'N' },
  settingFor: ({ sensors }, force) => {
    const { gainError, offset } = sensors.gauge
    return force * (1 + gainError) + offset
  },
  forceOf: sensedBand,
  create: (scenario, start) => new SensedForce(scenario, start),
}
