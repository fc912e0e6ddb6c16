/** Paths of a scenario's quantities that have a value. */
import { readPath, type Scenario } from '../../../sim/index.ts'
import { type Field, fieldAt, topKeys } from '../../read/scenario/walk.ts'

/** In the order of the file; `without` are those that make no difference to what is asked. */
export function quantitiesOf(scenario: Scenario, without: RegExp): string[] {
  const { job, actuator } = scenario
  const { kind } = actuator
  const inside = (field: Field | undefined): string[] => {
    if (!field || without.test(field.path)) return []
    if (field.kind === 'group') return field.fields.flatMap(inside)
    return field.kind === 'quantity' && typeof readPath(scenario, field.path) === 'number' ? [field.path] : []
  }
  return topKeys(kind, job).flatMap((key) => inside(fieldAt(kind, key, job)))
}
