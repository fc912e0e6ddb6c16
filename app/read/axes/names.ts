/** What the two axes are called where both stand. */
import { type Actuator, allAxes, type Scenario } from '../../../sim/index.ts'
import { familyLabel } from './columns.ts'

/** The generic axis that it is, else its family. */
export function axisTitle({ actuator }: Scenario): string {
  const own = JSON.stringify(actuator)
  const { ambient } = actuator.motor.thermal
  const preset = allAxes().find((each) => JSON.stringify(inAir(each.actuator, ambient)) === own)
  return preset?.title ?? familyLabel(actuator)
}

/** The same axis in air of another temperature [°C], which is of the place. */
function inAir({ kind, family, motor, transmission }: Actuator, ambient: number) {
  return { kind, family, motor: { ...motor, thermal: { ...motor.thermal, ambient } }, transmission }
}
