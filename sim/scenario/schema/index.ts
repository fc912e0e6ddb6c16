/**
 * The scenario format: the one source of types, defaults, allowed ranges, units, labels and of the published JSON Schema.
 * Values are SI; `shown` names the unit in which people usually read them.
 */
import Type from 'typebox'
import { group } from '../quantity.ts'
import { ACTUATORS } from './actuator.ts'
import { arm, type move } from './arm.ts'
import { drive, servo } from './drive.ts'
import { powerLoss, release } from './events.ts'
import { jaws } from './jaws.ts'
import { part } from './part.ts'
import { run } from './run.ts'
import { approach, strategies } from './strategies.ts'

const schemaOf = <A extends Type.TSchema>(actuator: A) =>
  Type.Object(
    {
      format: Type.Literal('jawbench-scenario', { default: 'jawbench-scenario' }),
      version: Type.Literal(1, { default: 1 }),
      name: Type.String({ title: 'Name', default: 'Untitled grip', maxLength: 200 }),
      notes: Type.String({ title: 'Notes', default: '', maxLength: 20000 }),
      actuator,
      jaws,
      part,
      drive,
      servo,
      approach,
      strategies,
      arm,
      events: group('Events', {
        powerLoss: Type.Union([Type.Null(), powerLoss], { title: 'Power loss', default: null }),
        release: Type.Union([Type.Null(), release], { title: 'Release', default: null }),
      }),
      run,
    },
    { title: 'Jawbench scenario, version 1', additionalProperties: false },
  )

/** The published format: any of the three kinds of actuator. */
export const SCENARIO_SCHEMA = schemaOf(
  Type.Union([ACTUATORS.screw, ACTUATORS.rack, ACTUATORS.direct], { title: 'Actuator', default: {} }),
)

/** The format for one kind of actuator, against which an input of that kind is checked. */
export const SCHEMAS = {
  screw: schemaOf(ACTUATORS.screw),
  rack: schemaOf(ACTUATORS.rack),
  direct: schemaOf(ACTUATORS.direct),
}

export type Scenario = Type.Static<typeof SCENARIO_SCHEMA>
export type Actuator = Scenario['actuator']
export type ActuatorKind = Actuator['kind']
export type ArmMove = Type.Static<typeof move>
