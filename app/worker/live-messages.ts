/** Everything that page and live worker say to each other. */
import type { ArmMove, LiveState, Scenario, StrategyId } from '../../sim/index.ts'

/** What the person does by a button. */
export type LiveAct = 'close' | 'open' | 'lift' | 'cutPower' | 'restorePower' | 'newPart'

/** Page → worker. `advance` asks for simulated seconds within a budget of real milliseconds; it alone is always answered. */
export type LiveRequest =
  | { kind: 'start'; scenario: Scenario; strategy: StrategyId }
  | { kind: 'change'; scenario: Scenario }
  | { kind: 'strategy'; strategy: StrategyId }
  | { kind: 'act'; act: LiveAct }
  | { kind: 'shake'; axis: ArmMove['axis'] }
  | { kind: 'advance'; seconds: number; budget: number }

/** New rows, columns in the order of CHANNELS, and the seconds that they took of those asked for. */
export interface LivePiece {
  kind: 'piece'
  columns: Float64Array[]
  state: LiveState
  seconds: number
}

/** Worker → page. */
export type LiveAnswer = LivePiece | { kind: 'refused'; message: string }
