import { Block, State } from '../core/block.ts'
import { fading } from '../core/fading.ts'

/**
 * Weight of the newest sample in a first-order low pass, by the backward Euler rule: period / (timeConstant + period).
 * Stable for every time constant, exactly 1 for none, and unlike 1 − exp(−period / timeConstant) made of operations
 * that every engine rounds alike. The pole lies at timeConstant / (timeConstant + period).
 */
export function smoothing(timeConstant: f64, period: f64): f64 {
  return period / (timeConstant + period)
}

class LowPassState extends State {
  value: f64 = 0
}

/** First-order low pass: H(z) = w / (1 − (1 − w) z⁻¹), w = `weight`. */
export class LowPass extends Block {
  weight: f64 = 1
  readonly state: LowPassState = new LowPassState()

  /** Time constant and sample period [s]. */
  set(timeConstant: f64, period: f64): void {
    this.weight = smoothing(timeConstant, period)
  }

  tick(sample: f64): f64 {
    const s = this.state
    s.value = fading(s.value + this.weight * (sample - s.value))
    return s.value
  }

  reset(): void {
    this.state.value = 0
  }
}

class DerivativeState extends State {
  value: f64 = 0
  previous: f64 = 0
  primed: f64 = 0
}

/**
 * Rate of change of a sampled signal, per second: the difference of two samples through a first-order low pass.
 * The first sample after a reset only sets the reference, so an axis that does not start at 0 gives no spike.
 */
export class FilteredDerivative extends Block {
  weight: f64 = 1
  /** [1/s] */
  rate: f64 = 1
  readonly state: DerivativeState = new DerivativeState()

  /** Time constant and sample period [s]. */
  set(timeConstant: f64, period: f64): void {
    this.weight = smoothing(timeConstant, period)
    this.rate = 1 / period
  }

  tick(sample: f64): f64 {
    const s = this.state
    if (s.primed > 0) s.value = fading(s.value + this.weight * ((sample - s.previous) * this.rate - s.value))
    s.primed = 1
    s.previous = sample
    return s.value
  }

  reset(): void {
    this.state.value = 0
    this.state.primed = 0
  }
}
