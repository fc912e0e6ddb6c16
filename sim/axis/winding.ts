import { Block, State } from '../core/block.ts'

class WindingState extends State {
  /** [A] */
  current: f64 = 0
}

/**
 * Winding: L di/dt = v − R i − K·speed, solved implicitly, so that any L/R is stable. Seen from the output: speed in m/s,
 * K in V·s/m.
 */
export class Winding extends Block {
  /** [H], resistance at 25 °C [Ω] */
  inductance: f64 = 1
  resistance: f64 = 0
  /** Step over inductance [s/H]. */
  gain: f64 = 0
  readonly state: WindingState = new WindingState()

  setStep(step: f64): void {
    this.gain = step / this.inductance
  }

  /** Fastest rate [rad/s]: a mass [kg] against the motor's own inductance, with so much force for each ampere [N/A]. */
  fastest(forcePerAmpere: f64, mass: f64): f64 {
    return Math.sqrt((forcePerAmpere * forcePerAmpere) / (this.inductance * mass))
  }

  /** What one step leaves of the current through a coil of `resistance` [Ω], without a voltage. */
  keeps(resistance: f64): f64 {
    return 1 / (1 + this.gain * resistance)
  }

  /** One step of the current under voltage less back-EMF [V]; `keeps` as above. */
  step(voltage: f64, keeps: f64): void {
    const s = this.state
    s.current = (s.current + this.gain * voltage) * keeps
  }
}
