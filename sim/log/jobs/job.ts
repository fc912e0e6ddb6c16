/** What a job says to logs of its axis: the axis free of its work, and what of the work a log tells in which something was met. */
import type { Load } from '../../axis/load.ts'
import type { Edit, Scenario } from '../../scenario/index.ts'
import type { Channel } from '../read/channels.ts'
import type { Driver } from '../replay.ts'
import type { LaidLog } from '../stages.ts'

export interface JobLog<Worked extends Load = Load> {
  /** The arm's pull along the way of the output is felt where nothing is met. */
  pulled(scenario: Scenario): boolean
  /** Columns in which the effort may stand, the first that there is. */
  effort: readonly Channel[]
  /** The work is always there: no log shows the axis free of it. */
  always?: true
  /** What drives the model where a log has it and nobody says otherwise; left out: the way that was wanted. */
  drivenBy?: Driver
  /** Keeps a run that a log drives from what the log knows nothing of. */
  quieten?(load: Worked): void
  /** Edits that put the work where a log meets it, and as it shows at once. */
  edits(scenario: Scenario, log: LaidLog): Edit[]
  /** Of the work what can be told by such logs; from what a person may set free. */
  paths(scenario: Scenario, logs: readonly LaidLog[]): string[]
  free: readonly string[]
  /** Highest that a quantity may be beside others, where the rules of the format say so. */
  most?(scenario: Scenario, path: string): number | undefined
}
