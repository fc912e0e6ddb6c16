import { Block } from '../core/block.ts'

/** Spring and damper with free play between motor side and output; the film in the play damps as the flanks do. */
export class Transmission extends Block {
  /** [N/m], [N·s/m], half of the backlash [m] */
  stiffness: f64 = 0
  damping: f64 = 0
  play: f64 = 0

  /** Fastest rate [rad/s] between two masses [kg]. */
  fastest(motor: f64, output: f64): f64 {
    const between: f64 = 1 / motor + 1 / output
    return Math.max(Math.sqrt(this.stiffness * between), this.damping * between)
  }

  /** Force on the output [N] for the motor side leading by `lead` [m] and `rate` [m/s]. */
  force(lead: f64, rate: f64): f64 {
    const stretch: f64 = lead > this.play ? lead - this.play : lead < -this.play ? lead + this.play : 0
    return this.stiffness * stretch + this.damping * rate
  }
}
