/**
 * A press fit over the length that is engaged. Bushing and wall are rings that give in proportion to how much they overlap, so the normal
 * force of a length is pressure times π·d (Lamé's thick-walled cylinders, as in DIN 7190-1). On the leading cone the overlap grows from
 * nothing to the whole interference, and axial over radial force is tan θ on which the wall slides back out, and (tan θ + µ)/(1 − µ·tan θ)
 * on the way in: a wedge with friction. Friction itself is the bristle of the axis (`axis/friction.ts`) whose level grows with the
 * engaged length; static friction above that of sliding makes it stick and slip.
 *
 * A bushing that is held askew overlaps more at one end and less at the other. As long as it touches all over, the one makes up for the
 * other; once the ends lift off the wall, what is left presses the more. Seen on two opposite lines along the joint, with a the overlap
 * that the tilt adds at an end, the mean overlap is (δ + a)²/(4a) where a > |δ|. Own derivation.
 */
import { Friction } from '../../axis/friction.ts'
import { Block } from '../../core/block.ts'

export class Joint extends Block {
  /** Radial overlap δ, below 0 for play [m]; pressure for each metre of it [Pa/m]; circumference and length of the joint [m]. */
  overlap: f64 = 0
  pressure: f64 = 0
  circumference: f64 = 0
  length: f64 = 0
  /** Length of the cone on which the overlap grows [m], and the axial force there for each newton: of the wedge alone, of friction in and out. */
  entry: f64 = 0
  climb: f64 = 0
  inwards: f64 = 0
  outwards: f64 = 0
  /** Friction while it slides, and that at rest beyond it. */
  sliding: f64 = 0
  rest: f64 = 0
  /** Half of the tilt [rad]: the overlap that it adds at an end, for each metre engaged. */
  tilt: f64 = 0
  readonly friction: Friction = new Friction()

  /** Length on which bushing and bore touch behind the cone [m]. */
  engaged(depth: f64): f64 {
    return Math.max(0, Math.min(depth - this.entry, this.length))
  }

  /** Normal force on the cone [N]: its overlap grows from nothing. */
  onCone(depth: f64): f64 {
    if (depth <= 0 || this.entry <= 0) return 0
    const share: f64 = Math.min(1, depth / this.entry)
    return 0.5 * share * share * this.entry * this.overlap * this.pressure * this.circumference
  }

  /** Normal force behind the cone that there is without tilt, and that tilt adds [N]. */
  straight(engaged: f64): f64 {
    return Math.max(0, this.overlap) * engaged * this.pressure * this.circumference
  }

  askew(engaged: f64): f64 {
    const end: f64 = this.tilt * engaged
    if (end <= Math.abs(this.overlap)) return 0
    const mean: f64 = ((this.overlap + end) * (this.overlap + end)) / (4 * end)
    return (mean - Math.max(0, this.overlap)) * engaged * this.pressure * this.circumference
  }

  /** Axial force that tilt adds on the way in [N]. */
  byTilt(depth: f64): f64 {
    return this.sliding * this.askew(this.engaged(depth))
  }

  /** Puts the levels of friction to those of a depth. */
  engage(depth: f64): void {
    const engaged: f64 = this.engaged(depth)
    const cone: f64 = this.onCone(depth)
    const behind: f64 = this.straight(engaged) + this.askew(engaged)
    this.friction.coulomb = this.inwards * cone + this.sliding * behind
    this.friction.coulombBack = this.outwards * cone + this.sliding * behind
    this.friction.rise = this.rest * (cone + behind)
  }

  /** Force against the bushing [N] at its depth [m] and speed [m/s]; called once a step. */
  force(depth: f64, speed: f64): f64 {
    this.engage(depth)
    return this.climb * this.onCone(depth) + this.friction.force(speed, 0)
  }
}
