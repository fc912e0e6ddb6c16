/**
 * The part across the grip axis: it hangs by friction at both contacts. A tangential spring with its force capped at
 * µ·ΣN (Cundall and Strack, Géotechnique 29, 1979) with a static and a sliding coefficient, in the two directions of the pad
 * plane: `sag` down, `drift` sideways [m].
 */
import { power } from './elementary.ts'

export interface SlipOptions {
  /** Mass of the part [kg], stiffness of one pad [N/m], coefficients, step [s] */
  mass: number
  padStiffness: number
  static: number
  sliding: number
  step: number
}

/** Shear stiffness of a rubber block over its compressive stiffness, G/E of an incompressible material. */
export const SHEAR = 1 / 3
/** Damping ratio of the part on the pads' shear stiffness; common practice for elastomers, no source. */
export const DAMPING_RATIO = 0.1

interface PadFriction {
  static: number
  loadExponent: number
  referenceForce: number
}

/**
 * Factor on the coefficients at `normal` [N] at one contact: µ = µ₀·(N/N₀)^(m−1), m = 1 on hard pads and 2/3 where a soft round
 * contact's area follows Hertz (Bowden and Tabor, The Friction and Lubrication of Solids, 1950).
 */
export function loadFactor({ loadExponent, referenceForce }: PadFriction, normal: number): number {
  return loadExponent < 1 && normal > 0 ? power(normal / referenceForce, loadExponent - 1) : 1
}

/** Force at one of two contacts [N] whose friction carries `load` [N] across the grip. */
export function holdingForce(friction: PadFriction, load: number): number {
  const each = load / (2 * friction.static)
  const { loadExponent: m, referenceForce } = friction
  return m < 1 && each > 0 ? referenceForce * power(each / referenceForce, 1 / m) : each
}

export const shearStiffness = (padStiffness: number) => 2 * SHEAR * padStiffness

export class Slip {
  sag = 0
  drift = 0
  /** Distance slid so far [m]. */
  distance = 0
  sliding = false
  private grip = 0
  private down = 0
  private side = 0
  private sagSpeed = 0
  private driftSpeed = 0
  private sagStretch = 0
  private driftStretch = 0
  private readonly mass: number
  private readonly stiffness: number
  private readonly damping: number
  private readonly static: number
  private readonly kinetic: number
  private readonly perMass: number
  private readonly dt: number

  constructor(options: SlipOptions) {
    this.mass = options.mass
    this.stiffness = shearStiffness(options.padStiffness)
    this.damping = 2 * DAMPING_RATIO * Math.sqrt(this.stiffness * options.mass)
    this.static = options.static
    this.kinetic = options.sliding
    this.perMass = 1 / options.mass
    this.dt = options.step
  }

  /** The support goes slowly, so the pads take the weight without a swing; `down` and `side` are what pulls on the part [m/s²]. */
  hang(down: number, side: number): void {
    this.sagStretch = (this.mass * down) / this.stiffness
    this.driftStretch = (this.mass * side) / this.stiffness
    this.sag = this.sagStretch
    this.drift = this.driftStretch
  }

  /** A part that hangs as in another one: where it is, how it moves, how far the pads are sheared. */
  take(previous: Slip): void {
    this.grip = previous.grip
    this.down = previous.down
    this.side = previous.side
    this.sag = previous.sag
    this.drift = previous.drift
    this.distance = previous.distance
    this.sliding = previous.sliding
    this.sagSpeed = previous.sagSpeed
    this.driftSpeed = previous.driftSpeed
    this.sagStretch = previous.sagStretch
    this.driftStretch = previous.driftStretch
  }

  /** `grip` is what both contact forces amount to for friction [N]; `down` and `side` what pulls on the part [m/s²]. */
  step(grip: number, down: number, side: number): void {
    // Handed over in fields: a call that is not inlined would box each of these numbers.
    this.grip = grip
    this.down = down
    this.side = side
    this.move()
  }

  private move(): void {
    const y = this.stiffness * this.sagStretch + this.damping * this.sagSpeed
    const z = this.stiffness * this.driftStretch + this.damping * this.driftSpeed
    const cap = (this.sliding ? this.kinetic : this.static) * this.grip
    if (y * y + z * z > cap * cap) {
      this.slide(y, z)
      return
    }
    this.sliding = false
    this.sagSpeed += this.dt * (this.down - y * this.perMass)
    this.driftSpeed += this.dt * (this.side - z * this.perMass)
    this.sagStretch += this.dt * this.sagSpeed
    this.driftStretch += this.dt * this.driftSpeed
    this.sag += this.dt * this.sagSpeed
    this.drift += this.dt * this.driftSpeed
  }

  /** A step of sliding: the springs stand at what sliding friction carries, and the part moves on without them. */
  private slide(y: number, z: number): void {
    const scale = (this.kinetic * this.grip) / Math.sqrt(y * y + z * z)
    this.sliding = true
    this.sagStretch = (y * scale) / this.stiffness
    this.driftStretch = (z * scale) / this.stiffness
    this.distance += this.dt * Math.sqrt(this.sagSpeed * this.sagSpeed + this.driftSpeed * this.driftSpeed)
    this.sagSpeed += this.dt * (this.down - y * scale * this.perMass)
    this.driftSpeed += this.dt * (this.side - z * scale * this.perMass)
    this.sag += this.dt * this.sagSpeed
    this.drift += this.dt * this.driftSpeed
  }
}
