/** Generic axes of every family, at least two each, to be compared for a job and put on the bench. */
import { faultLine } from '../fault.ts'
import { type Actuator, type ActuatorKind, JOBS, type JobId } from '../schema/index.ts'
import { SETTINGS_ANYWHERE } from '../schema/strategies.ts'
import { jobTaking, kindsTaken } from '../schema/taken.ts'
import { checkScenario } from '../validate.ts'
import type { AxisInput } from './axis.ts'
import { DIRECT_AXES } from './direct.ts'
import { PRESS_AXES } from './press.ts'
import { RACK_AXES } from './rack.ts'
import { SCREW_AXES } from './screw.ts'
import { SPINDLE_AXES } from './spindle.ts'

export interface AxisPreset {
  id: string
  title: string
  actuator: Actuator
}

const axisPreset = ({ id, title, actuator }: AxisInput): AxisPreset => {
  const job = jobTaking(actuator.kind as ActuatorKind)
  const checked = checkScenario({ job, actuator, servo: { currentLimit: 1 }, strategies: SETTINGS_ANYWHERE })
  if (!checked.ok) throw new Error(`axis ${id}: ${checked.faults.map(faultLine).join('; ')}`)
  return { id, title, actuator: checked.scenario.actuator }
}

/** Those of the size of a gripper. */
export const AXIS_PRESETS: AxisPreset[] = [...SCREW_AXES, ...RACK_AXES, ...DIRECT_AXES].map(axisPreset)

const PRESSES = PRESS_AXES.map(axisPreset)

let spindles: AxisPreset[] | undefined

/** None as long as no job takes a spindle: gripping does not. */
function spindleAxes(): AxisPreset[] {
  if (!Object.values(JOBS).some(({ spindle }) => spindle)) return []
  spindles ??= SPINDLE_AXES.map(axisPreset)
  return spindles
}

/** Those that a job can be done by which is here. */
export const allAxes = (): AxisPreset[] => [...AXIS_PRESETS, ...PRESSES, ...spindleAxes()]

/** What the axes of a job are chosen from; those of its size first. */
const OF_JOB: Partial<Record<JobId, AxisPreset[]>> = { grip: AXIS_PRESETS, press: [...PRESSES, ...AXIS_PRESETS] }

/** Generic axes of the kinds that can do a job. */
export const axesFor = (job: JobId): AxisPreset[] =>
  (OF_JOB[job] ?? allAxes()).filter(({ actuator }) => kindsTaken(job).includes(actuator.kind))
