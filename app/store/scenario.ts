/** The scenario on the bench, its history, the preset or file it came from, and the axis that stands beside its own. */
import { create } from 'zustand'
import {
  type AxisPreset,
  type Edit,
  editScenario,
  type Fault,
  PRESETS,
  readPath,
  type Scenario,
} from '../../sim/index.ts'
import { share } from './share.ts'

/** An axis with what it is called. */
export type Axis = Pick<AxisPreset, 'title' | 'actuator'>

interface Moment {
  scenario: Scenario
  base: Scenario
  /** The axis that is run beside that of the scenario; null: none. */
  beside: Axis | null
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
  undo(): void
  redo(): void
}

const LONGEST_HISTORY = 200

const first = PRESETS[0]!.scenario

export const useScenario = create<ScenarioState>()((set, get) => {
  let open: string | undefined

  const travel = (next: Moment, past: Moment[], future: Moment[]) => {
    open = undefined
    const links = { past, future, canUndo: past.length > 0, canRedo: future.length > 0 }
    set({ ...next, ...links, faults: [], turn: get().turn + 1 })
  }
  const here = (): Moment => ({ scenario: get().scenario, base: get().base, beside: get().beside })
  const grown = (past: Moment[]) => [...past, here()].slice(-LONGEST_HISTORY)

  return {
    scenario: first,
    base: first,
    beside: null,
    faults: [],
    past: [],
    future: [],
    canUndo: false,
    canRedo: false,
    turn: 0,

    edit: (path, value, gesture) => get().editMany([{ path, value }], gesture),

    editMany(edits, gesture) {
      const { scenario, base, beside, past, faults } = get()
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
      else travel({ scenario: edited, base, beside }, grown(past), [])
      open = gesture
      return true
    },

    endGesture() {
      open = undefined
    },

    load: (scenario, base = scenario, beside = null) => travel({ scenario, base, beside }, grown(get().past), []),

    setBeside(beside) {
      if (beside !== get().beside) travel({ ...here(), beside }, grown(get().past), [])
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
