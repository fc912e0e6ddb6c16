import { Block, State } from '../core/block.ts'
import { held, saturation } from './limit.ts'

class PiState extends State {
  /** In units of the output. */
  integral: f64 = 0
  /** −1, 0 or 1. */
  saturated: f64 = 0
  presetOutput: f64 = 0
  presetPending: f64 = 0
}

/**
 * What the controllers above the current loop share: proportional and integral part, held within ±limit with conditional
 * integration (the integral rests while the output is limited and the error would drive it further), and a bumpless takeover.
 * ∫ follows the trapezoidal rule, C(z) = kp + ki·period/2·(z + 1)/(z − 1). The integral is an output, so new gains do not change
 * what it holds.
 */
export abstract class LimitedPi extends Block {
  /** Of the output, either sign; may be changed between ticks. */
  limit: f64 = Infinity
  /** Output per error, with half a sample of the integral; integral's gain for each sample. */
  gain: f64 = 0
  integralStep: f64 = 0
  readonly state: PiState = new PiState()

  /** Output per error, and output per error and second; sample period [s]. */
  setPi(kp: f64, ki: f64, period: f64): void {
    this.integralStep = ki * period
    this.gain = kp + this.integralStep / 2
  }

  /** Output for an error, with what else acts directly on it. */
  protected output(error: f64, others: f64): f64 {
    const s = this.state
    const direct: f64 = this.gain * error + others
    if (s.presetPending > 0) {
      s.integral = s.presetOutput - direct
      s.presetPending = 0
    }
    const wanted: f64 = direct + s.integral
    s.saturated = saturation(wanted, this.limit)
    if (s.saturated * error <= 0) s.integral += this.integralStep * error
    return held(wanted, s.saturated, this.limit)
  }

  /** Bumpless takeover: the next tick sets the integral so that its output is this, whatever set point it is given. */
  preset(output: f64): void {
    this.state.presetOutput = output
    this.state.presetPending = 1
  }

  resetPi(): void {
    this.state.integral = 0
    this.state.saturated = 0
    this.state.presetPending = 0
  }
}
