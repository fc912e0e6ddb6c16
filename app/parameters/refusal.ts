/** Edits from the panel, and why the last one was refused: shown beneath the field that asked for it. */
import { create } from 'zustand'
import type { Scenario } from '../../sim/index.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { sentence } from './faultText.ts'

interface Refusal {
  path: string
  text: string
  /** The scenario that refused; with another one the words no longer hold. */
  scenario: Scenario | null
}

const useRefusal = create<Refusal>()(() => ({ path: '', text: '', scenario: null }))

/** Edits one key; several at once are `edits`, whose refusal is shown at `path`. */
export function edit(path: string, value: unknown, gesture?: string) {
  editMany(path, [{ path, value }], gesture)
}

export function editMany(path: string, edits: { path: string; value: unknown }[], gesture?: string) {
  const taken = useScenario.getState().editMany(edits, gesture)
  const { scenario, faults } = useScenario.getState()
  const text = taken ? '' : faults.map((fault) => sentence(fault, path, scenario, useView.getState().units)).join(' ')
  useRefusal.setState({ path, text, scenario })
}

export const endGesture = () => useScenario.getState().endGesture()

/** Why the last edit at `path` was refused; '' if it was not. */
export function useFault(path: string): string {
  const refusal = useRefusal((last) => (last.path === path && last.text !== '' ? last : null))
  const holds = useScenario(({ scenario }) => scenario === refusal?.scenario)
  return refusal && holds ? refusal.text : ''
}
