/** A key of the scenario as a person reads it. */
import { exponentOf, readPath, type Scenario } from '../../../sim/index.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { shownUnit, type UnitSystem } from '../units.ts'
import { fieldAt } from './walk.ts'

/** Figure with unit, a choice's words, the number of entries of a list; '' if it is not set. */
export function textAt(scenario: Scenario, path: string, system: UnitSystem): string {
  const field = fieldAt(scenario.actuator.kind, path, scenario.job)
  const value = readPath(scenario, path)
  if (!field || value === undefined || value === null) return ''
  if (field.kind === 'quantity') {
    const unit = shownUnit(field.schema, system, exponentOf(scenario))
    return withUnit(formatPlain(unit.toShown(value as number), 4), unit.symbol)
  }
  if (field.kind === 'choice')
    return lowerFirst(field.options.find((option) => option.value === value)?.label ?? String(value))
  if (field.kind === 'list') return count((value as unknown[]).length, field.item.toLowerCase())
  return typeof value === 'string' ? value : ''
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

const count = (n: number, what: string) => (n === 0 ? `no ${what}` : n === 1 ? `1 ${what}` : `${n} ${what}s`)
