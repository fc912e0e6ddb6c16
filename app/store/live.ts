/** The live bench: what the person has chosen, and what the plant that runs on says at the moment. */
import { create } from 'zustand'
import { type LiveState, STRATEGIES, type StrategyId, type Traces } from '../../sim/index.ts'

/** Simulated seconds for each real one. */
export const SPEEDS = [1, 0.1, 0.01] as const
export type Speed = (typeof SPEEDS)[number]

/** What is seen of the past, in real seconds at the chosen speed. */
export const SPAN = 3

export interface LiveMark {
  /** [s] */
  time: number
  label: string
  /** The part was hurt. */
  damage: boolean
}

export interface Live {
  strategy: StrategyId
  speed: Speed
  running: boolean
  /** The plant at the newest sample, and its traces over the span that is shown; null until the first piece is there. */
  now: { state: LiveState; traces: Traces } | null
  /** How far one can look back [s], and the traces over any span of it [s]. */
  oldest: number
  look: ((from: number, to: number) => Traces) | null
  /** What was done to the plant and what came of it, as far as one can look back. */
  marks: LiveMark[]
  /** The same a few times a second, for figures that are to be read. */
  read: LiveState | null
  /** Share of the chosen speed that the machine reaches. */
  pace: number
  /** Cursor in the traces while the plant is paused [s]; null: at the newest sample. */
  cursor: number | null
  /** Why the present parameters are not those of the plant, one sentence; null: they are. */
  refusal: string | null
}

export const useLive = create<Live>()(() => ({
  strategy: STRATEGIES.at(-1)!.id,
  speed: 1,
  running: true,
  now: null,
  oldest: 0,
  look: null,
  marks: [],
  read: null,
  pace: 1,
  cursor: null,
  refusal: null,
}))
