/** The three strategies, sampled with the servo. */
import { type Encoder, LimitedPi, LowPass, Servo } from './drive.ts'
import type { Input } from './input.ts'
import { type Aim, approachOf, Profile } from './profile.ts'

export const STRATEGY_IDS = ['threshold-stop', 'current-clamp', 'sensed-force'] as const
export type StrategyId = (typeof STRATEGY_IDS)[number]

export interface Strategy {
  /** Current command [A] at a servo sample; `reading` is that of the gauge [N]. */
  tick(time: number, encoder: Encoder, reading: number): number
}

export function strategyOf(id: StrategyId, input: Input): Strategy {
  if (id === 'threshold-stop') return new ThresholdStop(input)
  return id === 'current-clamp' ? new CurrentClamp(input) : new SensedForce(input)
}

class ThresholdStop implements Strategy {
  private readonly input: Input
  private readonly profile: Profile
  private readonly servo: Servo
  private readonly filter: LowPass
  /** Samples in a row that the command has stood above the threshold; each counts as one period. */
  private above = 0
  private stopped: Aim | null = null

  constructor(input: Input) {
    this.input = input
    this.profile = approachOf(input)
    this.servo = new Servo(input.servo)
    this.filter = new LowPass(input.thresholdStop.filter, input.servo.period)
  }

  tick(time: number, encoder: Encoder): number {
    const { thresholdStop, currentClamp, servo } = this.input
    const aim = this.aimAt(time)
    const limit = this.stopped && thresholdStop.press ? Math.min(currentClamp.limit, servo.limit) : servo.limit
    const command = this.servo.take(aim, encoder, limit)
    const filtered = this.filter.take(command)
    if (!this.stopped && this.confirmed(filtered, aim)) this.stopped = { ...aim, speed: 0, acceleration: 0 }
    return command
  }

  private aimAt(time: number): Aim {
    return this.stopped && !this.input.thresholdStop.press ? this.stopped : this.profile.at(time)
  }

  private confirmed(filtered: number, aim: Aim): boolean {
    const { threshold, confirmTime } = this.input.thresholdStop
    this.above = filtered > threshold && !(aim.acceleration > 0) ? this.above + 1 : 0
    return this.above * this.input.servo.period > confirmTime * (1 + 1e-9)
  }
}

class CurrentClamp implements Strategy {
  private readonly input: Input
  private readonly profile: Profile
  private readonly servo: Servo

  constructor(input: Input) {
    this.input = input
    this.profile = approachOf(input)
    this.servo = new Servo(input.servo)
  }

  tick(time: number, encoder: Encoder): number {
    const { currentClamp, servo, jaws } = this.input
    const opening = jaws.opening - jaws.contacts * encoder.travel
    const limit = opening > currentClamp.from ? servo.limit : Math.min(currentClamp.limit, servo.limit)
    return this.servo.take(this.profile.at(time), encoder, limit)
  }
}

class SensedForce implements Strategy {
  private readonly input: Input
  private readonly profile: Profile
  private readonly velocity: LimitedPi
  private readonly force: LimitedPi
  private readonly change: LowPass
  private last = 0
  /** Samples of the servo since the gauge felt contact, from which on the force loop counts its periods; −1: not yet. */
  private sinceContact = -1
  private wanted = 0

  constructor(input: Input) {
    const { sensedForce, servo } = input
    this.input = input
    this.profile = approachOf(input)
    this.velocity = new LimitedPi(sensedForce.velocityKp, sensedForce.velocityKi, servo.period)
    this.force = new LimitedPi(sensedForce.kp, sensedForce.ki, sensedForce.period)
    this.change = new LowPass(sensedForce.derivativeFilter, sensedForce.period)
  }

  tick(time: number, encoder: Encoder, reading: number): number {
    const { sensedForce, servo } = this.input
    const aim = this.profile.at(time)
    if (this.sinceContact < 0 && reading > sensedForce.contactForce && !(aim.acceleration > 0)) {
      this.sinceContact = 0
      this.last = reading
    }
    if (this.sinceContact < 0) this.wanted = aim.speed
    else if (this.sinceContact++ % sensedForce.every === 0) this.control(reading)
    return this.velocity.take(this.wanted - encoder.speed, servo.limit)
  }

  private control(reading: number) {
    const { sensedForce, approach } = this.input
    const change = this.change.take((reading - this.last) / sensedForce.period)
    this.last = reading
    const free = this.force.take(sensedForce.target - reading, sensedForce.speedLimit, -sensedForce.kd * change)
    const speed = Math.abs(free) <= sensedForce.deadBand ? 0 : free
    // Towards the part the jaws gather speed no faster than on the approach.
    this.wanted = Math.min(speed, Math.max(0, this.wanted) + approach.acceleration * sensedForce.period)
  }
}

/** The jaws open on a profile of their own. */
export class Opening implements Strategy {
  private readonly input: Input
  private readonly profile: Profile
  private readonly servo: Servo
  private readonly start: number
  private readonly from: number

  constructor(input: Input, time: number, from: number) {
    this.input = input
    this.start = time
    this.from = from
    this.servo = new Servo(input.servo)
    const { approach } = input
    this.profile = new Profile(approach, from > 0 ? [{ way: from, speed: approach.speed, last: 0 }] : [])
  }

  tick(time: number, encoder: Encoder): number {
    const { travel, speed, acceleration } = this.profile.at(time - this.start)
    const aim = { travel: this.from - travel, speed: -speed, acceleration: -acceleration }
    return this.servo.take(aim, encoder, this.input.servo.limit)
  }
}
