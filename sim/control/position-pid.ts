import { FilteredDerivative } from './filters.ts'
import { LimitedPi, type LimitedPiOptions } from './limited-pi.ts'

export interface PositionPidOptions extends LimitedPiOptions {
  /** A·s/m */
  kd: number
  /** time constant of the measured speed's low pass, s; 0 = off */
  speedFilter: number
  /** A·s/m */
  velocityFeedforward: number
  /** A·s²/m */
  accelerationFeedforward: number
}

/**
 * Position controller of the servo: u = kp e + ki ∫e + kd (profile speed − filtered measured speed) + feed-forward; kp in A/m,
 * ki in A/(m·s), limit in A.
 */
export class PositionPid extends LimitedPi {
  private readonly slope: FilteredDerivative
  private readonly kd: number
  private readonly velocityFeedforward: number
  private readonly accelerationFeedforward: number

  constructor(options: PositionPidOptions) {
    super(options)
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
    const others =
      this.kd * (speed - this.slope.tick(measured)) +
      this.velocityFeedforward * speed +
      this.accelerationFeedforward * acceleration
    return this.output(position - measured, others)
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
