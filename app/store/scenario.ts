/**
 * The scenario on the bench, its history, the preset or file it came from, the axis that stands beside its own, and what a person has
 * said about the logs that are open.
 */
import { create } from 'zustand'
import {
  type AxisPreset,
  type Choices,
  type Edit,
  editScenario,
  type Fault,
  type FitWish,
  PRESETS,
  type ResponseSaid,
  type ResponseShown,
  readPath,
  type Scenario,
} from '../../sim/index.ts'
import { share } from './share.ts'

/** An axis with what it is called. */
export type Axis = Pick<AxisPreset, 'title' | 'actuator'>

/** What a person has said about logs: kept beside the scenario, so that undo takes it back as everything else. */
export interface LogSettings {
  /** Of columns and rate, by the number of the log. */
  choices: Record<number, Choices>
  /** Recordings that do not count, as `LOG/RECORDING`. */
  leftOut: string[]
  wish: FitWish
  response: ResponseWish
}

/** What a person says of frequency responses. */
export interface ResponseWish {
  /** Of which recording one is computed, as `LOG/RECORDING`, or which table is shown, as `LOG`; null: the first table there is. */
  source: string | null
  /** What answers the current. */
  shown: ResponseShown
  /** Of tables, by the number of the log. */
  said: Record<number, ResponseSaid>
}

interface Moment {
  scenario: Scenario
  base: Scenario
  /** The axis that is run beside that of the scenario; null: none. */
  beside: Axis | null
  logs: LogSettings
}

export interface ScenarioState extends Moment {
  /** Why the last edit was refused; empty when it was not. */
  faults: Fault[]
  past: Moment[]
  future: Moment[]
  canUndo: boolean
  canRedo: boolean
  /** Counts undo steps made or taken: it stays the same for all edits of one gesture. */
  turn: number
  /** Checked edit of one key. Consecutive edits of the same gesture are one undo step. False: refused, see `faults`. */
  edit(path: string, value: unknown, gesture?: string): boolean
  editMany(edits: Edit[], gesture?: string): boolean
  endGesture(): void
  /**
   * Puts a checked scenario on the bench; `base`, or the scenario itself, becomes what "reset" goes back to. No axis stands beside
   * what is opened, unless it is told.
   */
  load(scenario: Scenario, base?: Scenario, beside?: Axis | null): void
  /** Puts an axis beside that of the scenario, or takes it away. */
  setBeside(beside: Axis | null): void
  /** One undo step, or part of that of a gesture. */
  setLogs(logs: LogSettings, gesture?: string): void
  undo(): void
  redo(): void
}

const LONGEST_HISTORY = 200

/** What a browser that keeps nothing opens. */
export const first = PRESETS[0]!.scenario

export const useScenario = create<ScenarioState>()((set, get) => {
  let open: string | undefined

  const travel = (next: Moment, past: Moment[], future: Moment[]) => {
    open = undefined
    const links = { past, future, canUndo: past.length > 0, canRedo: future.length > 0 }
    set({ ...next, ...links, faults: [], turn: get().turn + 1 })
  }
  const here = (): Moment => {
    const { scenario, base, beside, logs } = get()
    return { scenario, base, beside, logs }
  }
  const grown = (past: Moment[]) => [...past, here()].slice(-LONGEST_HISTORY)

  return {
    scenario: first,
    base: first,
    beside: null,
    logs: {
      choices: {},
      leftOut: [],
      wish: { free: null, part: null, drivenBy: null, origin: 0 },
      response: { source: null, shown: 'speed', said: {} },
    },
    faults: [],
    past: [],
    future: [],
    canUndo: false,
    canRedo: false,
    turn: 0,

    edit: (path, value, gesture) => get().editMany([{ path, value }], gesture),

    editMany(edits, gesture) {
      const { scenario, base, beside, logs, past, faults } = get()
      if (edits.every(({ path, value }) => Object.is(readPath(scenario, path), value))) {
        if (faults.length > 0) set({ faults: [] })
        return true
      }
      const checked = editScenario(scenario, edits)
      if (!checked.ok) {
        set({ faults: checked.faults })
        return false
      }
      const edited = share(scenario, checked.scenario)
      const continued = gesture !== undefined && gesture === open
      if (continued) set({ scenario: edited, faults: [] })
      else travel({ scenario: edited, base, beside, logs }, grown(past), [])
      open = gesture
      return true
    },

    endGesture() {
      open = undefined
    },

    load: (scenario, base = scenario, beside = null) =>
      travel({ scenario, base, beside, logs: get().logs }, grown(get().past), []),

    setBeside(beside) {
      if (beside !== get().beside) travel({ ...here(), beside }, grown(get().past), [])
    },

    setLogs(logs, gesture) {
      if (gesture !== undefined && gesture === open) set({ logs })
      else travel({ ...here(), logs }, grown(get().past), [])
      open = gesture
    },

    undo() {
      const { past, future } = get()
      const last = past.at(-1)
      if (last) travel(last, past.slice(0, -1), [here(), ...future])
    },

    redo() {
      const { past, future } = get()
      const [next, ...rest] = future
      if (next) travel(next, [...past, here()], rest)
    },
  }
})
