import { State } from '../core/block.ts'
import { FilteredDerivative } from './filters.ts'
import { LimitedPi } from './limited-pi.ts'

class SetpointState extends State {
  /** Where the set point stood at the first tick [m]: what the proportional part leaves out of it counts from there. */
  from: f64 = 0
  begun: f64 = 0
}

/**
 * Position controller of the servo with two degrees of freedom (Åström and Hägglund, Advanced PID Control, 2006):
 * u = kp (b r − y) + ki ∫(r − y) + kd (c profile speed − filtered measured speed) + feed-forward; kp in A/m, ki in A/(m·s), kd in A·s/m,
 * limit in A. A speed loop of proportional gain K_v inside a position loop of gain K_p is kp = K_p K_v, kd = K_v, c = 0.
 */
export class PositionPid extends LimitedPi {
  kd: f64 = 0
  /** A·s/m, A·s²/m */
  velocityFeedforward: f64 = 0
  accelerationFeedforward: f64 = 0
  /** kp (1 − b) [A/m], and c. */
  leftOut: f64 = 0
  derivativeWeight: f64 = 1
  readonly slope: FilteredDerivative = new FilteredDerivative()
  readonly setpoint: SetpointState = new SetpointState()

  /** Filtered measured speed at the last tick, m/s. */
  measuredSpeed(): f64 {
    return this.slope.state.value
  }

  /** Profile position, speed and acceleration, then the measured position (m, m/s, m/s²); returns the current wanted, A. */
  tick(position: f64, speed: f64, acceleration: f64, measured: f64): f64 {
    const s = this.setpoint
    if (s.begun === 0) s.from = position
    s.begun = 1
    const others: f64 =
      this.kd * (this.derivativeWeight * speed - this.slope.tick(measured)) +
      this.velocityFeedforward * speed +
      this.accelerationFeedforward * acceleration -
      this.leftOut * (position - s.from)
    return this.output(position - measured, others)
  }

  reset(): void {
    this.resetPi()
    this.slope.reset()
    this.setpoint.begun = 0
  }
}
