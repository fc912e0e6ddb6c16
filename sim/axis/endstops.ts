import { Block } from '../core/block.ts'

/** A stop is about as stiff as the axis that runs against it, up to this [N/m]; common practice, no source. */
export const STIFFEST_STOP: f64 = 5e6

/** End stops of the output's travel, one-sided springs with a damper that cannot pull. */
export class EndStops extends Block {
  /** [m], [N/m], [N·s/m] */
  stroke: f64 = 0
  stiffness: f64 = 0
  damping: f64 = 0

  /** Stiffness of the transmission [N/m], mass that strikes [kg]; damping ratio one half. */
  set(transmission: f64, mass: f64): void {
    this.stiffness = Math.min(transmission, STIFFEST_STOP)
    this.damping = Math.sqrt(this.stiffness * mass)
  }

  /** Fastest rate [rad/s] of the mass that strikes [kg]. */
  fastest(mass: f64): f64 {
    return Math.sqrt(this.stiffness / mass)
  }

  /** Force on the output [N], closing positive. */
  force(travel: f64, speed: f64): f64 {
    return travel >= 0 && travel <= this.stroke ? 0 : this.push(travel, speed)
  }

  private push(travel: f64, speed: f64): f64 {
    if (travel < 0) {
      const force: f64 = -this.stiffness * travel - this.damping * speed
      return force > 0 ? force : 0
    }
    const force: f64 = -this.stiffness * (travel - this.stroke) - this.damping * speed
    return force < 0 ? force : 0
  }
}
