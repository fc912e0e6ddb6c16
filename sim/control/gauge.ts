/**
 * Force gauge at the root of a finger or tool: first-order bandwidth, gain error, offset that drifts, noise, resolution. It also
 * feels the inertia of what is in front of it.
 */
import { Block, State } from '../core/block.ts'
import { Noise } from '../core/noise.ts'
import { quantise } from '../core/quantise.ts'

class GaugeState extends State {
  filtered: f64 = 0
}

export class Gauge extends Block {
  /** Weight of the newest sample; relative, [N], [N/s], rms [N], [N], [kg] */
  weight: f64 = 1
  gainError: f64 = 0
  offset: f64 = 0
  drift: f64 = 0
  noise: f64 = 0
  resolution: f64 = 0
  fingerMass: f64 = 0
  readonly source: Noise = new Noise()
  readonly state: GaugeState = new GaugeState()

  /** Contact force [N] and acceleration of the finger against free fall [m/s²], closing positive. */
  feel(force: f64, acceleration: f64): void {
    const s = this.state
    s.filtered += this.weight * (force + this.fingerMass * acceleration - s.filtered)
  }

  /** The reading at `time` [N]. */
  read(time: f64): f64 {
    const value: f64 =
      this.state.filtered * (1 + this.gainError) +
      this.offset +
      this.drift * time +
      (this.noise > 0 ? this.noise * this.source.normal() : 0)
    return quantise(value, this.resolution)
  }
}
