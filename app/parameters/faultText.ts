/** Faults of a scenario in the words and units of the page. */
import type { Fault, Scenario } from '../../sim/index.ts'
import { fieldAt } from '../read/scenario/walk.ts'
import { shownUnit, type UnitSystem } from '../read/units.ts'
import { formatPlain, withUnit } from '../ui/format.ts'

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
  const shown = (figure: string) => formatPlain(unit.toShown(Number(figure)), 4)
  return text
    .replace(
      new RegExp(`(${NUMBER}) to (${NUMBER}) ${escaped}(?![\\w/·²³^])`, 'g'),
      (_, a: string, b: string) => `${shown(a)} to ${withUnit(shown(b), unit.symbol)}`,
    )
    .replace(new RegExp(`(${NUMBER}) ${escaped}(?![\\w/·²³^])`, 'g'), (_, a: string) => withUnit(shown(a), unit.symbol))
}
