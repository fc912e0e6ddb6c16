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
import type { OTHER_FORMATS } from './others.ts'
import { part } from './part.ts'
import { requirements } from './requirements.ts'
import { run } from './run.ts'
import { sensors } from './sensors.ts'
import { spread, type varied } from './spread.ts'
import { approach, strategies } from './strategies.ts'

/** Groups that every job has; one may have its own in their place. */
const SHARED = { approach, requirements, servo, sensors, strategies, arm }

export type Shared = { [K in keyof typeof SHARED]: Type.TSchema }
type Own<S extends Partial<Shared>> = { [K in keyof Shared]: S[K] extends Type.TSchema ? S[K] : (typeof SHARED)[K] }

/** The format of one job on one kind of actuator. `groups` describe what the axis works on, `shared` are its own in place of groups that every job has. */
export const schemaOf = <
  const J extends string,
  G extends Type.TProperties,
  A extends Type.TSchema,
  S extends Partial<Shared> = Record<never, never>,
>(
  job: J,
  groups: G,
  actuator: A,
  shared?: S,
) => {
  const own = { ...SHARED, ...shared } as unknown as Own<S>
  return Type.Object(
    {
      format: Type.Literal('jawbench-scenario', { default: 'jawbench-scenario' }),
      version: Type.Literal(2, { default: 2 }),
      job: Type.Literal(job, { title: 'Job', default: job }),
      name: Type.String({ title: 'Name', default: 'Untitled grip', maxLength: 200 }),
      notes: Type.String({ title: 'Notes', default: '', maxLength: 20000 }),
      actuator,
      ...groups,
      drive,
      servo: own.servo as Own<S>['servo'],
      sensors: own.sensors as Own<S>['sensors'],
      approach: own.approach as Own<S>['approach'],
      strategies: own.strategies as Own<S>['strategies'],
      arm: own.arm as Own<S>['arm'],
      events: group('Events', {
        powerLoss: Type.Union([Type.Null(), powerLoss], { title: 'Power loss', default: null }),
        release: Type.Union([Type.Null(), release], { title: 'Release', default: null }),
      }),
      run,
      requirements: own.requirements as Own<S>['requirements'],
      spread,
    },
    { title: 'Jawbench scenario, version 2', additionalProperties: false },
  )
}

/** The formats of one job whose output travels in a straight line, for each kind of actuator. */
export const kindsOf = <
  const J extends string,
  G extends Type.TProperties,
  S extends Partial<Shared> = Record<never, never>,
>(
  job: J,
  groups: G,
  shared?: S,
) => ({
  screw: schemaOf(job, groups, ACTUATORS.screw, shared),
  rack: schemaOf(job, groups, ACTUATORS.rack, shared),
  direct: schemaOf(job, groups, ACTUATORS.direct, shared),
})

const GRIP = { jaws, part }

/** The format of a grip for one kind of actuator, against which an input of that kind is checked. */
export const SCHEMAS = kindsOf('grip', GRIP)

export type JobId = 'grip' | keyof typeof OTHER_FORMATS

type Formats = Partial<Record<ActuatorKind, Type.TObject>>

/**
 * What the axis works on, by the `job` of a scenario: the format for each kind of actuator that can do it. Those of jobs other than
 * gripping are in `others.ts` and enrolled here by `sim/others.ts`, which every program imports and the page as soon as it needs one.
 */
export const JOBS = { grip: SCHEMAS } as Partial<Record<JobId, Formats>> as Record<JobId, Formats>

/** A scenario that names no job is a grip. */
export const FIRST_JOB = 'grip' as JobId

/** The published format: any of the three kinds of actuator that move a jaw. */
export const SCENARIO_SCHEMA = schemaOf(
  FIRST_JOB,
  GRIP,
  Type.Union([ACTUATORS.screw, ACTUATORS.rack, ACTUATORS.direct], { title: 'Actuator', default: {} }),
)

export type Actuator = { [K in keyof typeof ACTUATORS]: Type.Static<(typeof ACTUATORS)[K]> }[keyof typeof ACTUATORS]
export type ActuatorKind = keyof typeof ACTUATORS
/** Kinds that move an output in a straight line. */
export type GripKind = keyof typeof SCHEMAS

export type Scenario = Omit<Type.Static<typeof SCENARIO_SCHEMA>, 'actuator'> & { actuator: Actuator }
export type ArmMove = Type.Static<typeof move>
export type Varied = Type.Static<typeof varied>
