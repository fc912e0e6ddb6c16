/** Faults of a scenario in the words and units of the page. */
import { type Fault, faultIn, type Scenario } from '../../sim/index.ts'
import { fieldAt } from '../read/scenario/walk.ts'
import type { UnitSystem } from '../read/units.ts'

/** A fault in the units on the page; one of another key than the one that was edited says which. */
export function sentence(fault: Fault, path: string, scenario: Scenario, system: UnitSystem): string {
  const field = fieldAt(scenario.actuator.kind, fault.path)
  const { given, allowed } = faultIn(fault, scenario, system)
  const title = field?.kind === 'quantity' ? field.schema.title : (field?.title ?? fault.path)
  const subject = fault.path === path ? 'Given' : `${title}: given`
  return `${subject} ${given}. Allowed: ${allowed}.`
}
