/**
 * One contact: a pad in series with half the part. The part is a spring K eⁿ with a share that relaxes in a Maxwell branch and a
 * force at which it yields; the damping of Hunt and Crossley (1975) comes on top.
 *
 * The branch is written with the force w that it has lost: q = φ P − w, so that ẇ = q/τ and the part bears P − w.
 */
import type { Input } from './input.ts'

/** Stiffness that a broken part keeps, as a share. */
const RESIDUAL = 0.02

export class Contact {
  private readonly part: Input['part']
  private readonly pad: number
  private stiffness: number
  private yieldForce: number
  private yieldFlattening: number
  /** Lasting dent [m], as it stood after the last accepted step. */
  dent = 0
  /** Force [N], rate of the lost force [N/s], and the dent at this squeeze [m]. */
  force = 0
  lossRate = 0
  dentNow = 0
  /** Energy in pad and spring [J]; without relaxation. */
  energy = 0

  constructor({ part, jaws }: Pick<Input, 'part' | 'jaws'>) {
    this.part = part
    this.pad = jaws.padStiffness
    this.stiffness = part.stiffness
    this.yieldForce = part.yieldForce
    this.yieldFlattening = (part.yieldForce / part.stiffness) ** (1 / part.exponent)
  }

  crack() {
    this.stiffness *= RESIDUAL
    this.yieldForce = Number.POSITIVE_INFINITY
    this.yieldFlattening = Number.POSITIVE_INFINITY
  }

  /** At the squeeze s [m] that grows at `rate` [m/s], with the lost force w [N]. */
  at(s: number, rate: number, w: number) {
    const { exponent, damping, relaxingShare, relaxationTime } = this.part
    const { pad } = this
    this.dentNow = this.dent
    let flattening = this.flatteningAt(s - this.dent / 2, w)
    let elastic = this.elastic(flattening)
    let borne = elastic - w
    if (flattening > this.yieldFlattening) {
      // Plastic: the spring stays at the yield force, and the dent takes what neither spring nor pad gives way.
      flattening = this.yieldFlattening
      elastic = this.yieldForce
      borne = elastic - w
      this.dentNow = Math.max(this.dent, 2 * (s - borne / pad) - flattening)
    }
    this.lossRate = (relaxingShare * elastic - w) / relaxationTime
    if (!(borne > 0)) {
      this.force = 0
      this.energy = 0
      return
    }
    const tangent = 2 * exponent * this.stiffness * flattening ** (exponent - 1)
    this.force = Math.max(0, borne * (1 + (2 * damping * rate * pad) / (pad + tangent)))
    this.energy = (borne * borne) / (2 * pad) + (elastic * flattening) / (2 * (exponent + 1))
  }

  private elastic(flattening: number): number {
    const { exponent } = this.part
    return exponent === 1 ? this.stiffness * flattening : this.stiffness * flattening ** exponent
  }

  /** Flattening e of the whole part: pad·(s − e/2) = K eⁿ − w; off the pad, that at which the part bears nothing. */
  private flatteningAt(s: number, w: number): number {
    const { exponent } = this.part
    const free = w > 0 ? (w / this.stiffness) ** (1 / exponent) : 0
    if (s <= free / 2) return free
    if (exponent === 1) return (this.pad * s + w) / (this.stiffness + this.pad / 2)
    // From above Newton's method comes down without a jump, as the equation is convex.
    const load = this.pad * s + w
    let e = Math.min((2 * load) / this.pad, (load / this.stiffness) ** (1 / exponent))
    for (let round = 0; round < 60; round++) {
      const power = this.stiffness * e ** (exponent - 1)
      const next = e - (power * e + (this.pad * e) / 2 - load) / (exponent * power + this.pad / 2)
      if (!(next < e * (1 - 1e-15))) break
      e = next
    }
    return e
  }
}
