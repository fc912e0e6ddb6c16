/** What may save a closure on the side of liner, thread and chuck. */
import type { JobRescue } from '../job.ts'
import { seatAngle } from './fill.ts'
import type { CapJudgement } from './result.ts'

/** Angle by which the seat of a closure may be off [rad]; common practice for moulded closures, no source. */
const CLEAR = 0.1

export const capRescue: JobRescue<CapJudgement> = {
  parameters: [
    { path: 'liner.stiffness', cost: 'tooling' },
    { path: 'closure.faceFriction', cost: 'tooling', first: 0.1 },
    { path: 'closure.threadFriction', cost: 'tooling', first: 0.1 },
    { path: 'chuck.stiffness', cost: 'mechanics' },
  ],
  creep: (scenario) => ({ none: 0, most: seatAngle(scenario), shortest: CLEAR, tried: CLEAR, sensible: 0.5 }),
  clear: CLEAR,
  alike: { forced: 'too much', stripped: 'too much' },
  worsens: new Set(['loose', 'forced', 'cross-threaded'] as const),
  supported: false,
}
