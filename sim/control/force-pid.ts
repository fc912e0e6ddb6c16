import { FilteredDerivative } from './filters.ts'
import { clamp, saturation } from './limit.ts'

export interface ForcePidOptions {
  /** m/(s·N) */
  kp: number
  /** m/(s²·N) */
  ki: number
  /** m/N */
  kd: number
  /** time constant of the measured force's derivative, s; 0 = off */
  derivativeFilter: number
  /** s */
  period: number
  /** m/s, either sign */
  limit: number
}

/**
 * Force controller of the sensed-force strategy: u = kp e + ki ∫e − kd dF/dt, a speed, held within ±limit with
 * conditional integration. The derivative acts on the filtered *measured* force, not on the error: the target steps when
 * the gauge feels contact, and its derivative would kick the jaw just as it touches. C(z) of the PI part is
 * kp + ki·period/2·(z + 1)/(z − 1).
 */
export class ForcePid {
  /** m/s; may be changed between ticks */
  limit: number
  /** m/s */
  integral = 0
  saturated: -1 | 0 | 1 = 0
  private readonly slope: FilteredDerivative
  private readonly gain: number
  private readonly integralStep: number
  private readonly kd: number
  private presetSpeed = 0
  private presetPending = false

  constructor(options: ForcePidOptions) {
    this.limit = options.limit
    this.integralStep = options.ki * options.period
    this.gain = options.kp + this.integralStep / 2
    this.kd = options.kd
    this.slope = new FilteredDerivative({ timeConstant: options.derivativeFilter, period: options.period })
  }

  /** Forces in N; returns the closing speed wanted, m/s. */
  tick(target: number, measured: number): number {
    const error = target - measured
    const direct = this.gain * error - this.kd * this.slope.tick(measured)
    if (this.presetPending) {
      this.integral = this.presetSpeed - direct
      this.presetPending = false
    }
    const speed = direct + this.integral
    this.saturated = saturation(speed, this.limit)
    if (this.saturated * error <= 0) this.integral += this.integralStep * error
    return clamp(speed, this.limit)
  }

  /** Bumpless takeover: the next tick sets the integral so that its output is `speed`, m/s. */
  preset(speed: number): void {
    this.presetSpeed = speed
    this.presetPending = true
  }

  /** Goes on from where another one stands; the integral is an output, so new gains do not change what it holds. */
  take(previous: ForcePid): void {
    this.integral = previous.integral
    this.saturated = previous.saturated
    this.presetSpeed = previous.presetSpeed
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
