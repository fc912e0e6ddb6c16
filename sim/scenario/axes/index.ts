/** Generic axes of every family, at least two each, to be compared for a part and put on the bench. */
import type { Actuator } from '../schema/index.ts'
import { SETTINGS_ANYWHERE } from '../schema/strategies.ts'
import { checkScenario, faultLine } from '../validate.ts'
import type { AxisInput } from './axis.ts'
import { DIRECT_AXES } from './direct.ts'
import { RACK_AXES } from './rack.ts'
import { SCREW_AXES } from './screw.ts'

export interface AxisPreset {
  id: string
  title: string
  actuator: Actuator
}

const axisPreset = ({ id, title, actuator }: AxisInput): AxisPreset => {
  const checked = checkScenario({ actuator, servo: { currentLimit: 1 }, strategies: SETTINGS_ANYWHERE })
  if (!checked.ok) throw new Error(`axis ${id}: ${checked.faults.map(faultLine).join('; ')}`)
  return { id, title, actuator: checked.scenario.actuator }
}

export const AXIS_PRESETS: AxisPreset[] = [...SCREW_AXES, ...RACK_AXES, ...DIRECT_AXES].map(axisPreset)
