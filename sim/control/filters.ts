/**
 * Weight of the newest sample in a first-order low pass, by the backward Euler rule: period / (timeConstant + period).
 * Stable for every time constant, exactly 1 for none, and unlike 1 − exp(−period / timeConstant) made of operations
 * that every engine rounds alike. The pole lies at timeConstant / (timeConstant + period).
 */
export function smoothing(timeConstant: number, period: number): number {
  return period / (timeConstant + period)
}

/** First-order low pass, sampled every `period` s: H(z) = w / (1 − (1 − w) z⁻¹), w = smoothing(timeConstant, period). */
export class LowPass {
  value = 0
  private readonly weight: number

  constructor(options: { timeConstant: number; period: number }) {
    this.weight = smoothing(options.timeConstant, options.period)
  }

  tick(sample: number): number {
    this.value += this.weight * (sample - this.value)
    return this.value
  }

  /** Goes on from where another one stands. */
  take(previous: LowPass): void {
    this.value = previous.value
  }

  reset(value = 0): void {
    this.value = value
  }
}

/**
 * Rate of change of a sampled signal, per second: the difference of two samples through a first-order low pass.
 * The first sample after a reset only sets the reference, so an axis that does not start at 0 gives no spike.
 */
export class FilteredDerivative {
  value = 0
  private readonly weight: number
  private readonly rate: number
  private previous = 0
  private primed = false

  constructor(options: { timeConstant: number; period: number }) {
    this.weight = smoothing(options.timeConstant, options.period)
    this.rate = 1 / options.period
  }

  tick(sample: number): number {
    if (this.primed) this.value += this.weight * ((sample - this.previous) * this.rate - this.value)
    this.primed = true
    this.previous = sample
    return this.value
  }

  /** Goes on from where another one stands. */
  take(previous: FilteredDerivative): void {
    this.value = previous.value
    this.previous = previous.previous
    this.primed = previous.primed
  }

  reset(): void {
    this.value = 0
    this.primed = false
  }
}
