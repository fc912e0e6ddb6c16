/** The sampled blocks of a drive: quantiser, limited PI, speed filter, current loop, servo. */
import type { Input } from './input.ts'
import type { Aim } from './profile.ts'

/** Nearest step; a step of zero leaves the value as it is. */
export const rounded = (value: number, step: number) => (step > 0 ? step * Math.floor(value / step + 0.5) : value)

/** First-order low pass, one value a period. */
export class LowPass {
  private readonly share: number
  value = 0

  constructor(time: number, period: number) {
    this.share = period / (time + period)
  }

  take(value: number): number {
    this.value += this.share * (value - this.value)
    return this.value
  }
}

/** Integral by the trapezoidal rule; it rests while the output is limited and the error would drive it further. */
export class LimitedPi {
  private readonly kp: number
  private readonly kiT: number
  sum = 0

  constructor(kp: number, ki: number, period: number) {
    this.kp = kp
    this.kiT = ki * period
  }

  /** `more` adds to the output before it is limited. */
  take(error: number, limit: number, more = 0): number {
    const free = (this.kp + this.kiT / 2) * error + this.sum + more
    const held = (free > limit && error > 0) || (free < -limit && error < 0)
    if (!held) this.sum += this.kiT * error
    return Math.min(limit, Math.max(-limit, free))
  }
}

/** What the encoder tells: travel, and speed behind its filter. */
export class Encoder {
  private readonly servo: Input['servo']
  private readonly filter: LowPass
  travel = 0

  constructor(servo: Input['servo']) {
    this.servo = servo
    this.filter = new LowPass(servo.filter, servo.period)
  }

  get speed() {
    return this.filter.value
  }

  take(travel: number) {
    const measured = rounded(travel, this.servo.resolution)
    this.filter.take((measured - this.travel) / this.servo.period)
    this.travel = measured
  }
}

/** Current PI whose zero lies on the pole of the cold winding; its voltage is for the next period. */
export class CurrentLoop {
  private readonly pi: LimitedPi
  private readonly input: Pick<Input, 'drive' | 'axis'>

  constructor(input: Pick<Input, 'drive' | 'motor' | 'axis'>) {
    const { drive, motor } = input
    this.input = input
    this.pi = new LimitedPi(motor.inductance * drive.bandwidth, motor.resistance * drive.bandwidth, drive.period)
  }

  take(command: number, current: number, speed: number): number {
    const { drive, axis } = this.input
    const measured = rounded(current + drive.offset, drive.resolution)
    return this.pi.take(command - measured, drive.voltage, drive.backEmf * axis.forceConstant * speed)
  }
}

/** Position PID; the current that it asks for. */
export class Servo {
  private readonly servo: Input['servo']
  private readonly pi: LimitedPi

  constructor(servo: Input['servo']) {
    this.servo = servo
    this.pi = new LimitedPi(servo.kp, servo.ki, servo.period)
  }

  take(aim: Aim, { travel, speed }: Pick<Encoder, 'travel' | 'speed'>, limit: number): number {
    const { kp, kd, velocityFeedforward, accelerationFeedforward, proportionalWeight, derivativeWeight } = this.servo
    const more =
      kp * (proportionalWeight - 1) * aim.travel +
      kd * (derivativeWeight * aim.speed - speed) +
      velocityFeedforward * aim.speed +
      accelerationFeedforward * aim.acceleration
    return this.pi.take(aim.travel - travel, limit, more)
  }
}
