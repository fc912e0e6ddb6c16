/** The axis at rest at a working point: where motor side, jaw and part stand, and the current and voltage that keep them there. */
import { stiffnessFactor, type WorkingPoint, type WorkingPointOptions } from '../loops/working-point.ts'
import { axisOf, contactsOf, travelToContact } from '../plant/axis.ts'
import { Commutation, isOpenLoop } from '../plant/commutation.ts'
import type { Heat } from '../plant/heat.ts'
import type { Plant } from '../plant/plant.ts'
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
export function balanceAt(scenario: Scenario, { force, travel, contact }: WorkingPoint, heat: Heat): Balance {
  const { actuator, drive } = scenario
  const axis = axisOf(actuator)
  const commutation = new Commutation(scenario, axis)
  const load = contactsOf(scenario) * force
  const motor = travel + load / actuator.transmission.stiffness + actuator.transmission.backlash / 2
  const field = isOpenLoop(scenario) ? motor + axis.cyclePitch / 4 : motor
  const current =
    (load - commutation.cogging(motor)) / (axis.forceConstant * heat.flux * commutation.factor(motor, field))
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
export function setDown(plant: Plant, { travel }: WorkingPoint, balance: Balance): void {
  plant.x = balance.travel
  plant.jawX = travel
  plant.partX = balance.shift
  plant.winding.current = balance.current
}
