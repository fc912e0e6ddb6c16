import { clamp, saturation } from './limit.ts'

/**
 * Gains of a PI current controller by pole-zero cancellation: its zero ki/kp lies on the winding's pole R/L, so that
 * the closed loop is 1/(1 + s/bandwidth). Takes Ω, H and rad/s; returns kp in V/A and ki in V/(A·s).
 */
export function currentGains(resistance: number, inductance: number, bandwidth: number): { kp: number; ki: number } {
  return { kp: inductance * bandwidth, ki: resistance * bandwidth }
}

export interface CurrentLoopOptions {
  /** V/A */
  kp: number
  /** V/(A·s) */
  ki: number
  /** s */
  period: number
  /** V, either sign */
  voltageLimit: number
  /** V·s per unit of the speed given to `tick`; 0 = no feed-forward */
  backEmf: number
}

/**
 * PI current controller with back-EMF feed-forward, voltage limit and conditional integration: the integral is held while
 * the output is limited and the error would drive it further. The integral follows the trapezoidal rule,
 * C(z) = kp + ki·period/2·(z + 1)/(z − 1), whose zero meets the sampled winding's pole exp(−R·period/L) to third order.
 */
export class CurrentLoop {
  voltageLimit: number
  /** V */
  integral = 0
  saturated: -1 | 0 | 1 = 0
  private readonly gain: number
  private readonly integralStep: number
  private readonly backEmf: number

  constructor(options: CurrentLoopOptions) {
    this.voltageLimit = options.voltageLimit
    this.backEmf = options.backEmf
    this.integralStep = options.ki * options.period
    this.gain = options.kp + this.integralStep / 2
  }

  /** Currents in A; returns the voltage wanted, within ±voltageLimit. */
  tick(target: number, measured: number, speed: number): number {
    const error = target - measured
    const voltage = this.gain * error + this.integral + this.backEmf * speed
    this.saturated = saturation(voltage, this.voltageLimit)
    if (this.saturated * error <= 0) this.integral += this.integralStep * error
    return clamp(voltage, this.voltageLimit)
  }

  /** Goes on from where another one stands. */
  take(previous: CurrentLoop): void {
    this.integral = previous.integral
    this.saturated = previous.saturated
  }

  reset(): void {
    this.integral = 0
    this.saturated = 0
  }
}
