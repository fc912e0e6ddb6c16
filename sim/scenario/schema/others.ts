/** The formats of the jobs other than gripping, for each kind of actuator that can do them: one line a job. */
import type Type from 'typebox'
import { ACTUATORS } from './actuator.ts'
import { CAP, CAP_SHARED } from './cap/index.ts'
import { kindsOf, type Shared, schemaOf } from './index.ts'
import { PRESS, PRESS_SHARED } from './press/index.ts'
import { TURNING } from './turning/index.ts'
import { WEB, WEB_SHARED } from './web/index.ts'

/** The formats of one job whose output turns: angles in rad, efforts in N·m (`turning/`). */
export const turningKindsOf = <
  const J extends string,
  G extends Type.TProperties,
  S extends Partial<Shared> = Record<never, never>,
>(
  job: J,
  groups: G,
  shared?: S,
) => ({ spindle: schemaOf(job, groups, ACTUATORS.spindle, { ...TURNING, ...shared }) })

export const OTHER_FORMATS = {
  press: kindsOf('press', PRESS, PRESS_SHARED),
  cap: turningKindsOf('cap', CAP, CAP_SHARED),
  web: turningKindsOf('web', WEB, WEB_SHARED),
}
