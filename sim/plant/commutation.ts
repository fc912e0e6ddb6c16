/**
 * What makes a motor's force depend on position: cogging, ripple of the force constant, a force constant that falls towards
 * the ends of a short stroke, and a step motor run open loop, whose field pulls the rotor towards a commanded angle. All as
 * seen from the jaw.
 */
import type { Actuator, Scenario } from '../scenario/index.ts'
import type { Axis } from './axis.ts'
import { sineOfTurns } from './elementary.ts'

export class Commutation {
  /** Nothing here depends on position: `factor` is 1 and `cogging` 0 throughout. */
  readonly smooth: boolean
  private readonly coggingForce: number
  private readonly perCog: number
  private readonly ripple: number
  private readonly perRipple: number
  private readonly endLoss: number
  private readonly perHalfStroke: number
  private readonly perCycle: number

  constructor(scenario: Scenario, axis: Axis) {
    const { motor } = scenario.actuator
    this.coggingForce = axis.coggingForce
    this.perCog = 1 / axis.coggingPeriod
    this.ripple = motor.ripple.share
    this.perRipple = 1 / axis.ripplePeriod
    this.endLoss = 'endLoss' in motor ? motor.endLoss : 0
    this.perHalfStroke = 2 / scenario.jaws.stroke
    this.perCycle = isOpenLoop(scenario) ? 1 / axis.cyclePitch : 0
    this.smooth = this.coggingForce === 0 && this.ripple === 0 && this.endLoss === 0 && this.perCycle === 0
  }

  /** Factor on the force constant at travel `x`, with the field commanded to `target` [m]. */
  factor(x: number, target: number): number {
    let factor = 1
    if (this.ripple > 0) factor += this.ripple * sineOfTurns(x * this.perRipple)
    if (this.endLoss > 0) {
      const off = x * this.perHalfStroke - 1
      factor *= 1 - this.endLoss * off * off
    }
    // The rotor lags the field: no force where it stands in the field, most force a quarter of a cycle away.
    if (this.perCycle > 0) factor *= sineOfTurns((target - x) * this.perCycle)
    return factor
  }

  /** Force without current [N]. */
  cogging(x: number): number {
    return this.coggingForce > 0 ? this.coggingForce * sineOfTurns(x * this.perCog) : 0
  }
}

/** A step motor without an encoder: the field follows the command and the rotor follows the field. */
export const isOpenLoop = ({ actuator }: { actuator: Actuator }) => actuator.kind === 'screw' && actuator.motor.openLoop
