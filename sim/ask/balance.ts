/** The axis at rest at a working point: where motor side, jaw and part stand, and the current and voltage that keep them there. */

import type { Axis } from '../axis/axis.ts'
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { contactsOf, travelToContact } from '../job/grip/geometry.ts'
import type { GripLoad } from '../job/grip/load.ts'
import { stiffnessFactor, type WorkingPoint, type WorkingPointOptions } from '../loops/working-point.ts'
import type { Scenario } from '../scenario/index.ts'

export interface Balance {
  /** Travel of the motor side [m]; it leads the jaw by what the transmission gives way, on the closing flank. */
  travel: number
  /** Shift of the part along the grip [m]. */
  shift: number
  /** Current [A], the command that gives it with the measurement's offset, and the voltage that it takes [V]. */
  current: number
  command: number
  voltage: number
}

/** The part of a working point under the same axis. */
export function partAt(scenario: Scenario, { id }: WorkingPoint, options: WorkingPointOptions = {}): Scenario {
  const stiffness = scenario.part.stiffness * stiffnessFactor(id, options.spread)
  return { ...scenario, part: { ...scenario.part, stiffness } }
}

/** Without dry friction; gravity along the grip is left out, as in the linear loops. */
export function balanceAt(scenario: Scenario, { force, travel, contact }: WorkingPoint, axis: Axis): Balance {
  const { actuator, drive } = scenario
  const { commutation, heat, forcePerAmpere } = axis
  const load = contactsOf(scenario) * force
  const motor = travel + load / actuator.transmission.stiffness + actuator.transmission.backlash / 2
  const field = isOpenLoop(scenario) ? motor + axisOf(actuator).cyclePitch / 4 : motor
  const current = (load - commutation.cogging(motor)) / (forcePerAmpere * heat.flux * commutation.factor(motor, field))
  return {
    travel: motor,
    // Against an anvil the part sinks into the far contact as deep as the jaw into the near one.
    shift: contact && contactsOf(scenario) === 1 ? (travel - travelToContact(scenario)) / 2 : 0,
    current,
    command: current + drive.currentOffset,
    voltage: current * actuator.motor.resistance * heat.resistance,
  }
}

/** Puts the axis there, at rest. */
export function setDown(axis: Axis, load: GripLoad, { travel }: WorkingPoint, balance: Balance): void {
  axis.state.motorTravel = balance.travel
  axis.state.travel = travel
  axis.winding.state.current = balance.current
  load.state.shift = balance.shift
}
