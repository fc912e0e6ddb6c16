/** What was run: the newest run of each strategy on the axis of the bench and on the one beside it, the ones before the present gesture, and the pinned ones. */
import { create } from 'zustand'
import type { GripResult, Scenario, StrategyId, Traces } from '../../sim/index.ts'

export interface RunView {
  strategy: StrategyId
  /** What it is called and its line's dash where it stands beside others of its strategy, and the sign along the line. */
  look?: { name: string; dash: string | undefined; sign?: 'circle' }
  /** What the axis is called that it ran on; left out: that of the bench. */
  axis?: string
  scenario: Scenario
  status: 'running' | 'done' | 'failed'
  /** Why it failed. */
  message?: string
  /** Of a long run: the share that is done and since when it runs, by the page's clock [ms]. */
  progress?: { done: number; since: number }
  /** Ends a long run where it stands; runs what was ended so once more. */
  stop?: () => void
  again?: () => void
  result: GripResult | null
  /** Columns of `rows` values each; new arrays whenever `revision` grows. */
  traces: Traces | null
  rows: number
  revision: number
}

export interface Pin {
  id: string
  label: string
  run: RunView
}

export type Runs = Partial<Record<StrategyId, RunView>>

interface ResultsState {
  runs: Runs
  /** Those on the axis beside that of the bench. */
  beside: Runs
  /** The last finished runs before the present gesture, on both axes. */
  ghosts: Runs
  besideGhosts: Runs
  pins: Pin[]
  /** Something the person should know, one sentence; null: nothing. */
  notice: string | null
  /** What stands behind the notice, a line each. */
  details: string[]
  pin(run: RunView | undefined, label: string): void
  unpin(id: string): void
  unpinAll(): void
  say(notice: string | null, details?: string[]): void
}

/** Names of pins; one more pin pushes the oldest out. */
const LETTERS = [...'ABCDEF']

export const useResults = create<ResultsState>()((set, get) => ({
  runs: {},
  beside: {},
  ghosts: {},
  besideGhosts: {},
  pins: [],
  notice: null,
  details: [],

  pin(run, label) {
    if (run?.status !== 'done') return
    const kept = get().pins.slice(1 - LETTERS.length)
    const id = LETTERS.find((letter) => kept.every((pin) => pin.id !== letter)) ?? ''
    set({ pins: [...kept, { id, label, run }] })
  },

  unpin: (id) => set({ pins: get().pins.filter((pin) => pin.id !== id) }),

  unpinAll: () => set({ pins: [] }),

  say: (notice, details = []) => set({ notice, details }),
}))
