/** What warm magnets leave of an axis' force. */
import type { Actuator } from '../scenario/index.ts'
import { Heat } from './heat.ts'
import { axisOf } from './reflect.ts'

/** Factor on the force constant where the magnets are at `temperature` [°C]. */
export function fluxAt({ magnetCoefficient }: Actuator['motor']['thermal'], temperature: number): number {
  const heat = new Heat()
  heat.magnetCoefficient = magnetCoefficient
  heat.state.housing = temperature
  heat.settle()
  return heat.flux
}

/** Force at the output for each ampere [N/A] with the magnets at a temperature [°C]: that of what is around the motor, if left out. */
export const forcePerAmpereAt = (actuator: Actuator, magnets = actuator.motor.thermal.ambient): number =>
  axisOf(actuator).forcePerAmpere * fluxAt(actuator.motor.thermal, magnets)
