/** The scenario room: the file format, its defaults, checks, presets and edits by path. */
export { AXIS_PRESETS, type AxisPreset, allAxes, axesFor } from './axes/index.ts'
export { type Edit, editScenario } from './edit.ts'
export { exponentOf } from './exponent.ts'
export { type Fault, faultLine, Refusal, show } from './fault.ts'
export { liftTime } from './lift.ts'
export { pathNow } from './migrate.ts'
export { readPath } from './path.ts'
export { ALL_PRESETS, PRESETS, type Preset } from './presets/index.ts'
export { publishedSchema } from './published.ts'
export type { ChoiceSchema, QuantitySchema } from './quantity.ts'
export { quantityAt } from './quantity-at.ts'
export { ACTUATORS, type SpindleFamily } from './schema/actuator.ts'
export {
  type Actuator,
  type ActuatorKind,
  type ArmMove,
  type GripKind,
  JOBS as JOB_SCHEMAS,
  type JobId,
  SCENARIO_SCHEMA,
  SCHEMAS,
  type Scenario,
  type Varied,
} from './schema/index.ts'
export { SETTINGS_ANYWHERE } from './schema/strategies.ts'
export { jobTaking, kindsTaken } from './schema/taken.ts'
export type { StrategyId } from './strategy-id.ts'
export { type Checked, checkScenario, LONGEST_FILE, parseScenario } from './validate.ts'
