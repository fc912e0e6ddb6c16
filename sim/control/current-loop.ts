import { Block, State } from '../core/block.ts'
import { held, saturation } from './limit.ts'

class CurrentLoopState extends State {
  /** V */
  integral: f64 = 0
  /** −1, 0 or 1. */
  saturated: f64 = 0
}

/**
 * PI current controller with back-EMF feed-forward, voltage limit and conditional integration: the integral is held while
 * the output is limited and the error would drive it further. The integral follows the trapezoidal rule,
 * C(z) = kp + ki·period/2·(z + 1)/(z − 1), whose zero meets the sampled winding's pole exp(−R·period/L) to third order.
 */
export class CurrentLoop extends Block {
  /** V, either sign */
  voltageLimit: f64 = Infinity
  /** V/A with half a sample of the integral, V/A for each sample, V·s per unit of the speed given to `tick`. */
  gain: f64 = 0
  integralStep: f64 = 0
  backEmf: f64 = 0
  readonly state: CurrentLoopState = new CurrentLoopState()

  /**
   * Gains by pole-zero cancellation for a winding of `resistance` [Ω] and `inductance` [H]: kp = L·ωc, ki = R·ωc, so that the
   * controller's zero ki/kp lies on the winding's pole R/L and the closed loop is 1/(1 + s/ωc); `bandwidth` ωc [rad/s], `period` [s].
   */
  set(resistance: f64, inductance: f64, bandwidth: f64, period: f64): void {
    this.integralStep = resistance * bandwidth * period
    this.gain = inductance * bandwidth + this.integralStep / 2
  }

  /** Currents in A; returns the voltage wanted, within ±voltageLimit. */
  tick(target: f64, measured: f64, speed: f64): f64 {
    const s = this.state
    const error: f64 = target - measured
    const voltage: f64 = this.gain * error + s.integral + this.backEmf * speed
    s.saturated = saturation(voltage, this.voltageLimit)
    if (s.saturated * error <= 0) s.integral += this.integralStep * error
    return held(voltage, s.saturated, this.voltageLimit)
  }

  reset(): void {
    this.state.integral = 0
    this.state.saturated = 0
  }
}
