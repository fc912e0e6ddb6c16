import { FilteredDerivative } from './filters.ts'
import { LimitedPi } from './limited-pi.ts'

/**
 * Position controller of the servo: u = kp e + ki ∫e + kd (profile speed − filtered measured speed) + feed-forward; kp in A/m,
 * ki in A/(m·s), kd in A·s/m, limit in A.
 */
export class PositionPid extends LimitedPi {
  kd: f64 = 0
  /** A·s/m, A·s²/m */
  velocityFeedforward: f64 = 0
  accelerationFeedforward: f64 = 0
  readonly slope: FilteredDerivative = new FilteredDerivative()

  /** Filtered measured speed at the last tick, m/s. */
  measuredSpeed(): f64 {
    return this.slope.state.value
  }

  /** Profile position, speed and acceleration, then the measured position (m, m/s, m/s²); returns the current wanted, A. */
  tick(position: f64, speed: f64, acceleration: f64, measured: f64): f64 {
    const others: f64 =
      this.kd * (speed - this.slope.tick(measured)) +
      this.velocityFeedforward * speed +
      this.accelerationFeedforward * acceleration
    return this.output(position - measured, others)
  }

  reset(): void {
    this.resetPi()
    this.slope.reset()
  }
}
