/** Friction of the axis: bristles that are elastic at first and slide at last (Dupont, Hayward, Armstrong and Altpeter 2002). */
import type { Input } from './input.ts'

/** Share of its greatest deflection up to which a bristle is purely elastic. */
const ELASTIC = 0.9
/** Deflection at which the loaded flanks slide [m], and time constant of their damping [s]. */
const REACH = 2e-6
const FLANK_DAMPING = 2e-4

/** Share of sliding in the motion of a bristle with the deflection z that slides at `most`: 0 elastic, 1 all of it. */
export function sliding(z: number, v: number, most: number): number {
  if (z * v <= 0) return 0
  const u = (Math.abs(z) / most - ELASTIC) / (1 - ELASTIC)
  if (u <= 0) return 0
  return u >= 1 ? 1 : u * u * (3 - 2 * u)
}

/** Rate of a bristle's deflection [m/s]. */
export function bristleRate(z: number, v: number, most: number): number {
  return v - (sliding(z, v, most) * Math.abs(v) * z) / most
}

/** Friction level at a speed [N] (Hess and Soom 1990), for either direction. */
export function frictionLevel(friction: Input['friction'], v: number): number {
  const { coulomb, coulombBack, breakaway, stribeckSpeed } = friction
  const ratio = v / stribeckSpeed
  // Break-away stands above sliding friction by as much in either direction.
  return (v < 0 ? coulombBack : coulomb) + (breakaway - coulomb) / (1 + ratio * ratio)
}

/** Friction without load: rate of the bristle [m/s] and force [N]. */
export class AxisFriction {
  readonly friction: Input['friction']
  private readonly damping: number
  private readonly none: boolean
  rate = 0
  force = 0

  constructor({ friction, axis }: Pick<Input, 'friction' | 'axis'>) {
    this.friction = friction
    this.damping = Math.sqrt(friction.bristleStiffness * axis.mass)
    this.none = friction.coulomb === 0 && friction.coulombBack === 0 && friction.breakaway === 0
  }

  at(z: number, v: number) {
    const { bristleStiffness, viscous, viscousBack } = this.friction
    const viscousForce = (v < 0 ? viscousBack : viscous) * v
    this.rate = this.none ? 0 : bristleRate(z, v, frictionLevel(this.friction, v) / bristleStiffness)
    this.force = this.none ? viscousForce : bristleStiffness * z + this.damping * this.rate + viscousForce
  }
}

/** Friction of thread or gear, in proportion to the load that they carry. */
export class LoadFriction {
  private readonly axis: Input['axis']
  rate = 0
  force = 0

  constructor({ axis }: Pick<Input, 'axis'>) {
    this.axis = axis
  }

  at(y: number, v: number, load: number) {
    this.rate = bristleRate(y, v, REACH)
    const share = y * load > 0 ? this.axis.against : this.axis.along
    this.force = ((share * Math.abs(load)) / REACH) * (y + FLANK_DAMPING * this.rate)
  }
}
