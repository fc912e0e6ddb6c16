import { clamp, saturation } from './limit.ts'

export interface VelocityPiOptions {
  /** A·s/m */
  kp: number
  /** A/m */
  ki: number
  /** s */
  period: number
  /** A, either sign */
  limit: number
}

/**
 * PI speed controller: u = kp e + ki ∫e, held within ±limit with conditional integration (the integral rests while the
 * output is limited and the error would drive it further). C(z) = kp + ki·period/2·(z + 1)/(z − 1).
 */
export class VelocityPi {
  /** A; may be changed between ticks */
  limit: number
  /** A */
  integral = 0
  saturated: -1 | 0 | 1 = 0
  private readonly gain: number
  private readonly integralStep: number
  private presetCurrent = 0
  private presetPending = false

  constructor(options: VelocityPiOptions) {
    this.limit = options.limit
    this.integralStep = options.ki * options.period
    this.gain = options.kp + this.integralStep / 2
  }

  /** Speeds in m/s; returns the current wanted, A. */
  tick(target: number, measured: number): number {
    const error = target - measured
    const direct = this.gain * error
    if (this.presetPending) {
      this.integral = this.presetCurrent - direct
      this.presetPending = false
    }
    const current = direct + this.integral
    this.saturated = saturation(current, this.limit)
    if (this.saturated * error <= 0) this.integral += this.integralStep * error
    return clamp(current, this.limit)
  }

  /** Bumpless takeover: the next tick sets the integral so that its output is `current`, A. */
  preset(current: number): void {
    this.presetCurrent = current
    this.presetPending = true
  }

  /** Goes on from where another one stands; the integral is an output, so new gains do not change what it holds. */
  take(previous: VelocityPi): void {
    this.integral = previous.integral
    this.saturated = previous.saturated
    this.presetCurrent = previous.presetCurrent
    this.presetPending = previous.presetPending
  }

  reset(): void {
    this.integral = 0
    this.saturated = 0
    this.presetPending = false
  }
}
