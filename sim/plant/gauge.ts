/**
 * Force gauge at the root of a finger: first-order bandwidth, gain error, offset that drifts, noise, resolution. It also
 * feels the inertia of the finger in front of it.
 */
import { Noise } from './noise.ts'
import { quantise } from './quantise.ts'

export interface GaugeOptions {
  /** [rad/s], relative, [N], [N/s], rms [N], [N], [kg] */
  bandwidth: number
  gainError: number
  offset: number
  drift: number
  noise: number
  resolution: number
  fingerMass: number
}

/** Keeps the gauge's noise apart from that of the current measurement. */
const SEED_OFFSET = 0x9e3779b9

export class Gauge {
  private filtered = 0
  private readonly options: GaugeOptions
  private readonly weight: number
  private readonly noise: Noise

  /** `period` [s] between two calls of `feel`. */
  constructor(options: GaugeOptions, period: number, seed: number) {
    this.options = options
    this.weight = (period * options.bandwidth) / (1 + period * options.bandwidth)
    this.noise = new Noise(seed + SEED_OFFSET)
  }

  /** Goes on from what another gauge feels. */
  take(previous: Gauge): void {
    this.filtered = previous.filtered
    this.noise.take(previous.noise)
  }

  /** Contact force [N] and acceleration of the finger against free fall [m/s²], closing positive. */
  feel(force: number, acceleration: number): void {
    this.filtered += this.weight * (force + this.options.fingerMass * acceleration - this.filtered)
  }

  /** The reading at `time` [N]. */
  read(time: number): number {
    const { gainError, offset, drift, noise, resolution } = this.options
    const value =
      this.filtered * (1 + gainError) + offset + drift * time + (noise > 0 ? noise * this.noise.normal() : 0)
    return quantise(value, resolution)
  }
}
