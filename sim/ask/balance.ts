/** The axis at a working point: where motor side and output stand, with what speed, and the current and voltage that keep them so. */

import type { Axis } from '../axis/axis.ts'
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { loopsOf } from '../loops/jobs/index.ts'
import { type WorkingPoint, workAt } from '../loops/working-point.ts'
import type { Scenario } from '../scenario/index.ts'

export interface Balance {
  /** Travel of the motor side [m]; it leads the output by what the transmission gives way, on the closing flank. */
  travel: number
  /** Current [A], the command that gives it with the measurement's offset, and the voltage that it takes [V]. */
  current: number
  command: number
  voltage: number
}

/** Without dry friction; gravity along the output's way is left out, as in the linear loops. */
export function balanceAt(scenario: Scenario, point: WorkingPoint, axis: Axis): Balance {
  const { actuator, drive } = scenario
  const { stiffness, backlash } = actuator.transmission
  const { commutation, heat, forcePerAmpere } = axis
  const load = loopsOf(scenario).pull(workAt(scenario, point), point)
  const motor = point.travel + load / stiffness + backlash / 2
  const field = isOpenLoop(scenario) ? motor + axisOf(actuator).cyclePitch / 4 : motor
  const constant = forcePerAmpere * heat.flux * commutation.factor(motor, field)
  const current = (load + axis.friction.viscous * point.speed - commutation.cogging(motor)) / constant
  return {
    travel: motor,
    current,
    command: current + drive.currentOffset,
    voltage: current * actuator.motor.resistance * heat.resistance + constant * point.speed,
  }
}

/** Puts the axis there. */
export function setDown(axis: Axis, { travel, speed }: WorkingPoint, balance: Balance): void {
  axis.state.motorTravel = balance.travel
  axis.state.motorSpeed = speed
  axis.state.travel = travel
  axis.state.speed = speed
  axis.winding.state.current = balance.current
}
