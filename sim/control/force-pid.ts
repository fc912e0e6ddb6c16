import { FilteredDerivative } from './filters.ts'
import { LimitedPi, type LimitedPiOptions } from './limited-pi.ts'

export interface ForcePidOptions extends LimitedPiOptions {
  /** m/N */
  kd: number
  /** time constant of the measured force's derivative, s; 0 = off */
  derivativeFilter: number
}

/**
 * Force controller of the sensed-force strategy: u = kp e + ki ∫e − kd dF/dt, a speed; kp in m/(s·N), ki in m/(s²·N), limit in
 * m/s. The derivative acts on the filtered *measured* force, not on the error: the target steps when the gauge feels contact,
 * and its derivative would kick the jaw just as it touches.
 */
export class ForcePid extends LimitedPi {
  private readonly slope: FilteredDerivative
  private readonly kd: number

  constructor(options: ForcePidOptions) {
    super(options)
    this.kd = options.kd
    this.slope = new FilteredDerivative({ timeConstant: options.derivativeFilter, period: options.period })
  }

  /** Forces in N; returns the closing speed wanted, m/s. */
  tick(target: number, measured: number): number {
    return this.output(target - measured, -this.kd * this.slope.tick(measured))
  }

  override take(previous: this): void {
    super.take(previous)
    this.slope.take(previous.slope)
  }

  override reset(): void {
    super.reset()
    this.slope.reset()
  }
}
