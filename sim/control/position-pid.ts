import { FilteredDerivative } from './filters.ts'
import { clamp, saturation } from './limit.ts'

export interface PositionPidOptions {
  /** A/m */
  kp: number
  /** A/(m·s) */
  ki: number
  /** A·s/m */
  kd: number
  /** time constant of the measured speed's low pass, s; 0 = off */
  speedFilter: number
  /** A·s/m */
  velocityFeedforward: number
  /** A·s²/m */
  accelerationFeedforward: number
  /** s */
  period: number
  /** A, either sign */
  limit: number
}

/**
 * Position controller of the servo: u = kp e + ki ∫e + kd (profile speed − filtered measured speed) + feed-forward,
 * held within ±limit, with conditional integration: the integral rests while the output is limited and the error would
 * drive it further. ∫ follows the trapezoidal rule, C(z) = kp + ki·period/2·(z + 1)/(z − 1).
 */
export class PositionPid {
  /** A; may be changed between ticks */
  limit: number
  /** A */
  integral = 0
  saturated: -1 | 0 | 1 = 0
  private readonly slope: FilteredDerivative
  private readonly gain: number
  private readonly integralStep: number
  private readonly kd: number
  private readonly velocityFeedforward: number
  private readonly accelerationFeedforward: number
  private presetCurrent = 0
  private presetPending = false

  constructor(options: PositionPidOptions) {
    this.limit = options.limit
    this.integralStep = options.ki * options.period
    this.gain = options.kp + this.integralStep / 2
    this.kd = options.kd
    this.velocityFeedforward = options.velocityFeedforward
    this.accelerationFeedforward = options.accelerationFeedforward
    this.slope = new FilteredDerivative({ timeConstant: options.speedFilter, period: options.period })
  }

  /** Filtered measured speed at the last tick, m/s. */
  get measuredSpeed(): number {
    return this.slope.value
  }

  /** Profile position, speed and acceleration, then the measured position (m, m/s, m/s²); returns the current wanted, A. */
  tick(position: number, speed: number, acceleration: number, measured: number): number {
    const error = position - measured
    const direct =
      this.gain * error +
      this.kd * (speed - this.slope.tick(measured)) +
      this.velocityFeedforward * speed +
      this.accelerationFeedforward * acceleration
    if (this.presetPending) {
      this.integral = this.presetCurrent - direct
      this.presetPending = false
    }
    const current = direct + this.integral
    this.saturated = saturation(current, this.limit)
    if (this.saturated * error <= 0) this.integral += this.integralStep * error
    return clamp(current, this.limit)
  }

  /**
   * Bumpless takeover: the next tick sets the integral so that its output is `current`, whatever set point it is given;
   * control goes on from there.
   */
  preset(current: number): void {
    this.presetCurrent = current
    this.presetPending = true
  }

  /** Goes on from where another one stands; the integral is an output, so new gains do not change what it holds. */
  take(previous: PositionPid): void {
    this.integral = previous.integral
    this.saturated = previous.saturated
    this.presetCurrent = previous.presetCurrent
    this.presetPending = previous.presetPending
    this.slope.take(previous.slope)
  }

  reset(): void {
    this.integral = 0
    this.saturated = 0
    this.presetPending = false
    this.slope.reset()
  }
}
