/**
 * Edits from the panel, and why one was refused: shown beneath the field that asked for it. A typed figure that another key stands
 * against waits beside its reason, and is tried again together with each edit that follows: two keys that must change at once can.
 */
import { create } from 'zustand'
import { type Edit, editScenario, type Fault, type Scenario } from '../../sim/index.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { sentence } from './faultText.ts'

interface Refused {
  /** Of the field that asked. */
  path: string
  edits: Edit[]
  waits: boolean
  text: string
}

interface Refusals {
  list: Refused[]
  /** The scenario that refused; with another one the words no longer hold and nothing waits. */
  scenario: Scenario | null
}

const useRefusals = create<Refusals>()(() => ({ list: [], scenario: null }))

/** Edits one key; several at once are `edits`, whose refusal is shown at `path`. False: refused. */
export const edit = (path: string, value: unknown, gesture?: string, typed = false) =>
  editMany(path, [{ path, value }], gesture, typed)

export function editMany(path: string, edits: Edit[], gesture?: string, typed = false): boolean {
  const { scenario, editMany: make } = useScenario.getState()
  const waiting = waitingOn(scenario).filter((other) => other.path !== path)
  const along = goesAlong(scenario, edits, waiting)
  const taken = make([...along.flatMap((other) => other.edits), ...edits], gesture)
  const { scenario: now, faults } = useScenario.getState()
  const still = waiting.filter((other) => !along.includes(other)).flatMap((other) => anew(other, now))
  const list = taken ? still : [...still, refused({ path, edits, waits: typed }, faults, now)]
  useRefusals.setState({ list, scenario: now })
  return taken
}

function waitingOn(scenario: Scenario): Refused[] {
  const { list, scenario: before } = useRefusals.getState()
  return scenario === before ? list.filter(({ waits }) => waits) : []
}

/** Of those that wait, all or one that `edits` can be made together with; none where they cannot. */
function goesAlong(scenario: Scenario, edits: Edit[], waiting: Refused[]): Refused[] {
  const some = [...(waiting.length > 1 ? [waiting] : []), ...waiting.map((one) => [one])]
  return some.find((each) => editScenario(scenario, [...each.flatMap((one) => one.edits), ...edits]).ok) ?? []
}

/** One that waits on, with its reason in the scenario as it is now. */
function anew(waiting: Refused, scenario: Scenario): Refused[] {
  const checked = editScenario(scenario, waiting.edits)
  return checked.ok ? [] : [refused(waiting, checked.faults, scenario)]
}

function refused({ path, edits, waits }: Omit<Refused, 'text'>, faults: Fault[], scenario: Scenario): Refused {
  const reasons = faults.map((fault) => sentence(fault, path, scenario, useView.getState().units))
  const text = [...reasons, ...(waits ? ['Change the other one as well: both are then taken together.'] : [])].join(' ')
  return { path, edits, waits, text }
}

export const endGesture = () => useScenario.getState().endGesture()

/** Why the last edit at `path` was refused; '' if it was not. */
export function useFault(path: string): string {
  const text = useRefusals(({ list }) => list.find((one) => one.path === path)?.text ?? '')
  const holds = useScenario(({ scenario }) => scenario === useRefusals.getState().scenario)
  return holds ? text : ''
}
