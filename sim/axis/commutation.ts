/**
 * What makes a motor's force depend on position: cogging, ripple of the force constant, a force constant that falls towards
 * the ends of a short stroke, and a step motor run open loop, whose field pulls the rotor towards a commanded angle. All as
 * seen from the output.
 */
import { Block } from '../core/block.ts'
import { sineOfTurns } from '../core/elementary.ts'

export class Commutation extends Block {
  /** [N], [m], periods a metre, share, periods a metre */
  coggingForce: f64 = 0
  coggingPeriod: f64 = 1
  perCog: f64 = 1
  ripple: f64 = 0
  perRipple: f64 = 1
  /** Share of the force constant lost at the ends of the stroke; 2/stroke [1/m]. */
  endLoss: f64 = 0
  perHalfStroke: f64 = 0
  /** Electrical cycles a metre of a step motor in open loop; 0: closed loop. */
  perCycle: f64 = 0

  /** Fastest rate [rad/s] of a mass [kg] held by cogging alone. */
  fastest(mass: f64): f64 {
    return Math.sqrt((this.coggingForce * 2 * Math.PI) / (this.coggingPeriod * mass))
  }

  /** Something here depends on position; else `factor` is 1 and `cogging` 0 throughout. */
  shaped(): bool {
    return this.coggingForce !== 0 || this.ripple !== 0 || this.endLoss !== 0 || this.perCycle !== 0
  }

  /** Factor on the force constant at travel `x`, with the field commanded to `target` [m]. */
  factor(x: f64, target: f64): f64 {
    let factor: f64 = 1
    if (this.ripple > 0) factor += this.ripple * sineOfTurns(x * this.perRipple)
    if (this.endLoss > 0) {
      const off: f64 = x * this.perHalfStroke - 1
      factor *= 1 - this.endLoss * off * off
    }
    // The rotor lags the field: no force where it stands in the field, most force a quarter of a cycle away.
    if (this.perCycle > 0) factor *= sineOfTurns((target - x) * this.perCycle)
    return factor
  }

  /** Force without current [N]. */
  cogging(x: f64): f64 {
    return this.coggingForce > 0 ? this.coggingForce * sineOfTurns(x * this.perCog) : 0
  }
}
