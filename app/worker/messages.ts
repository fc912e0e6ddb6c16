/** Everything that page and simulator worker say to each other. */
import type { GripResult, Scenario, StrategyId } from '../../sim/index.ts'

export interface GripJob {
  scenario: Scenario
  strategy: StrategyId
  /** Whether the traces are wanted, or the result alone. */
  traces: boolean
}

/** Page → worker. `job` counts up; `newest`, where memory can be shared, holds the number of the job still wanted. */
export type Request = { kind: 'grip'; job: number; input: GripJob; newest: Int32Array | null }

/** Worker → page. */
export type Answer =
  | { kind: 'ready' }
  | { kind: 'started'; job: number }
  /** The share of the job that is done, now and then. */
  | { kind: 'progress'; job: number; done: number }
  /** New rows, columns in the order of CHANNELS. */
  | { kind: 'chunk'; job: number; columns: Float64Array[] }
  | { kind: 'done'; job: number; result: GripResult }
  | { kind: 'stopped'; job: number }
  | { kind: 'failed'; job: number; message: string }
