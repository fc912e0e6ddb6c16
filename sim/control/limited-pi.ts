import { clamp, saturation } from './limit.ts'

export interface LimitedPiOptions {
  /** Output per error, and output per error and second. */
  kp: number
  ki: number
  /** s */
  period: number
  /** Of the output, either sign. */
  limit: number
}

/**
 * What the controllers above the current loop share: proportional and integral part, held within ±limit with conditional
 * integration (the integral rests while the output is limited and the error would drive it further), and a bumpless takeover.
 * ∫ follows the trapezoidal rule, C(z) = kp + ki·period/2·(z + 1)/(z − 1).
 */
export abstract class LimitedPi {
  /** May be changed between ticks. */
  limit: number
  /** In units of the output. */
  integral = 0
  saturated: -1 | 0 | 1 = 0
  private readonly gain: number
  private readonly integralStep: number
  private presetOutput = 0
  private presetPending = false

  constructor({ kp, ki, period, limit }: LimitedPiOptions) {
    this.limit = limit
    this.integralStep = ki * period
    this.gain = kp + this.integralStep / 2
  }

  /** Output for an error, with what else acts directly on it. */
  protected output(error: number, others: number): number {
    const direct = this.gain * error + others
    if (this.presetPending) {
      this.integral = this.presetOutput - direct
      this.presetPending = false
    }
    const wanted = direct + this.integral
    this.saturated = saturation(wanted, this.limit)
    if (this.saturated * error <= 0) this.integral += this.integralStep * error
    return clamp(wanted, this.limit)
  }

  /** Bumpless takeover: the next tick sets the integral so that its output is this, whatever set point it is given. */
  preset(output: number): void {
    this.presetOutput = output
    this.presetPending = true
  }

  /** Goes on from where another one stands; the integral is an output, so new gains do not change what it holds. */
  take(previous: this): void {
    this.integral = previous.integral
    this.saturated = previous.saturated
    this.presetOutput = previous.presetOutput
    this.presetPending = previous.presetPending
  }

  reset(): void {
    this.integral = 0
    this.saturated = 0
    this.presetPending = false
  }
}
