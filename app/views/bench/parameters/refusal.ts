/** Edits from the panel, and why the last one was refused: shown beneath the field that asked for it. */
import { create } from 'zustand'
import type { Fault, Scenario } from '../../../../sim/index.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { formatPlain, withUnit } from '../../../ui/format.ts'
import { shownUnit, type UnitSystem } from '../../../ui/units.ts'
import { fieldAt } from './walk.ts'

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
  const scenario = useScenario((state) => state.scenario)
  return useRefusal((refusal) => (refusal.path === path && refusal.scenario === scenario ? refusal.text : ''))
}

/** A fault in the units on the page; one of another key than the one that was edited says which. */
export function sentence(fault: Fault, path: string, scenario: Scenario, system: UnitSystem): string {
  const field = fieldAt(scenario.actuator.kind, fault.path)
  const convert = (text: string) =>
    field?.kind === 'quantity' ? inShownUnit(text, field.schema, scenario, system) : text
  const title = field?.kind === 'quantity' ? field.schema.title : (field?.title ?? fault.path)
  const subject = fault.path === path ? 'Given' : `${title}: given`
  return `${subject} ${convert(fault.given)}. Allowed: ${convert(fault.allowed)}.`
}

const NUMBER = /-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/.source

/** Figures in a fault's text come in SI; those that carry the key's unit are put into the shown one. */
function inShownUnit(
  text: string,
  schema: { unit: string; shown?: string },
  scenario: Scenario,
  system: UnitSystem,
): string {
  if (schema.unit === '') return text
  const unit = shownUnit(schema, system, scenario.part.exponent)
  const escaped = schema.unit.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')
  const shown = (figure: string) => formatPlain(unit.toShown(Number(figure)))
  return text
    .replace(
      new RegExp(`(${NUMBER}) to (${NUMBER}) ${escaped}(?![\\w/·²³^])`, 'g'),
      (_, a: string, b: string) => `${shown(a)} to ${withUnit(shown(b), unit.symbol)}`,
    )
    .replace(new RegExp(`(${NUMBER}) ${escaped}(?![\\w/·²³^])`, 'g'), (_, a: string) => withUnit(shown(a), unit.symbol))
}
