/** Everything that page and live worker say to each other. */
import type { LiveState, Scenario, StrategyId } from '../../sim/index.ts'

/** Page → worker. `advance` asks for simulated seconds within a budget of real milliseconds; it alone is always answered. */
export type LiveRequest =
  | { kind: 'start'; scenario: Scenario; strategy: StrategyId }
  | { kind: 'change'; scenario: Scenario }
  | { kind: 'strategy'; strategy: StrategyId }
  | { kind: 'act'; act: string }
  | { kind: 'advance'; seconds: number; budget: number }

/** New rows, a column a channel of the job in their order, and the seconds that they took of those asked for. */
export interface LivePiece {
  kind: 'piece'
  columns: Float64Array[]
  state: LiveState
  seconds: number
}

/** Worker → page. */
export type LiveAnswer = LivePiece | { kind: 'refused'; message: string }
