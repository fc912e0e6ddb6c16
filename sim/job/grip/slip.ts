/**
 * The part across the grip axis: it hangs by friction at both contacts. A tangential spring with its force capped at
 * µ·ΣN (Cundall and Strack, Géotechnique 29, 1979) with a static and a sliding coefficient, in the two directions of the pad
 * plane: `sag` down, `drift` sideways [m].
 */
import { Block, State } from '../../core/block.ts'

/** Shear stiffness of a rubber block over its compressive stiffness, G/E of an incompressible material. */
export const SHEAR: f64 = 1 / 3
/** Damping ratio of the part on the pads' shear stiffness; common practice for elastomers, no source. */
export const DAMPING_RATIO: f64 = 0.1

/** Of both pads [N/m]. */
export function shearStiffness(padStiffness: f64): f64 {
  return 2 * SHEAR * padStiffness
}

class SlipState extends State {
  sag: f64 = 0
  drift: f64 = 0
  sagSpeed: f64 = 0
  driftSpeed: f64 = 0
  /** Shear of the pads [m]. */
  sagStretch: f64 = 0
  driftStretch: f64 = 0
  /** Distance slid so far [m]. */
  distance: f64 = 0
  sliding: f64 = 0
}

export class Slip extends Block {
  /** [kg], [N/m], [N·s/m], coefficients, [1/kg], [s] */
  mass: f64 = 1
  stiffness: f64 = 1
  damping: f64 = 0
  staticFriction: f64 = 1
  slidingFriction: f64 = 1
  perMass: f64 = 1
  step: f64 = 0
  readonly state: SlipState = new SlipState()

  /** Mass of the part [kg], stiffness of one pad [N/m]. */
  set(mass: f64, padStiffness: f64): void {
    this.mass = mass
    this.perMass = 1 / mass
    this.stiffness = shearStiffness(padStiffness)
    this.damping = 2 * DAMPING_RATIO * Math.sqrt(this.stiffness * mass)
  }

  /** Fastest rate [rad/s]. */
  fastest(): f64 {
    return Math.sqrt(this.stiffness / this.mass)
  }

  /** The support goes slowly, so the pads take the weight without a swing; `down` and `side` are what pulls on the part [m/s²]. */
  hang(down: f64, side: f64): void {
    const s = this.state
    s.sagStretch = (this.mass * down) / this.stiffness
    s.driftStretch = (this.mass * side) / this.stiffness
    s.sag = s.sagStretch
    s.drift = s.driftStretch
  }

  /** `grip` is what both contact forces amount to for friction [N]; `down` and `side` what pulls on the part [m/s²]. */
  move(grip: f64, down: f64, side: f64): void {
    const s = this.state
    const y: f64 = this.stiffness * s.sagStretch + this.damping * s.sagSpeed
    const z: f64 = this.stiffness * s.driftStretch + this.damping * s.driftSpeed
    const cap: f64 = (s.sliding > 0 ? this.slidingFriction : this.staticFriction) * grip
    if (y * y + z * z > cap * cap) {
      this.slide(y, z, grip, down, side)
      return
    }
    s.sliding = 0
    s.sagSpeed += this.step * (down - y * this.perMass)
    s.driftSpeed += this.step * (side - z * this.perMass)
    s.sagStretch += this.step * s.sagSpeed
    s.driftStretch += this.step * s.driftSpeed
    s.sag += this.step * s.sagSpeed
    s.drift += this.step * s.driftSpeed
  }

  /** A step of sliding: the springs stand at what sliding friction carries, and the part moves on without them. */
  private slide(y: f64, z: f64, grip: f64, down: f64, side: f64): void {
    const s = this.state
    const scale: f64 = (this.slidingFriction * grip) / Math.sqrt(y * y + z * z)
    s.sliding = 1
    s.sagStretch = (y * scale) / this.stiffness
    s.driftStretch = (z * scale) / this.stiffness
    s.distance += this.step * Math.sqrt(s.sagSpeed * s.sagSpeed + s.driftSpeed * s.driftSpeed)
    s.sagSpeed += this.step * (down - y * scale * this.perMass)
    s.driftSpeed += this.step * (side - z * scale * this.perMass)
    s.sag += this.step * s.sagSpeed
    s.drift += this.step * s.driftSpeed
  }
}
