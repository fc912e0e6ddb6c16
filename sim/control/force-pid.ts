import { FilteredDerivative } from './filters.ts'
import { LimitedPi } from './limited-pi.ts'

/**
 * Force controller of the sensed-force strategy: u = kp e + ki ∫e − kd dF/dt, a speed; kp in m/(s·N), ki in m/(s²·N), kd in m/N,
 * limit in m/s. The derivative acts on the filtered *measured* force, not on the error: the target steps when the gauge feels
 * contact, and its derivative would kick the jaw just as it touches.
 */
export class ForcePid extends LimitedPi {
  kd: f64 = 0
  readonly slope: FilteredDerivative = new FilteredDerivative()

  /** Forces in N; returns the closing speed wanted, m/s. */
  tick(target: f64, measured: f64): f64 {
    return this.output(target - measured, -this.kd * this.slope.tick(measured))
  }

  reset(): void {
    this.resetPi()
    this.slope.reset()
  }
}
