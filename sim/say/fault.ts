/** Faults come in the units of the file, SI; a reader takes them in his own. */
import { exponentOf, type Fault, quantityAt, type Scenario } from '../scenario/index.ts'
import { formatPlain, withUnit } from './figure.ts'
import { type ShownUnit, shownUnit, type UnitSystem } from './units.ts'

const NUMBER = /-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/.source
/** Digits of a bound that somebody has to keep to. */
const DIGITS = 4

/** The fault with every figure that carries its key's unit put into the one that is read. */
export function faultIn(fault: Fault, scenario: Scenario, system: UnitSystem): Fault {
  // A window is refused as a whole, in the unit of its edges.
  const schema = quantityAt(scenario, fault.path) ?? quantityAt(scenario, `${fault.path}.least`)
  if (!schema || schema.unit === '') return fault
  const unit = shownUnit(schema, system, exponentOf(scenario))
  const { path, given, allowed } = fault
  return { path, given: convert(given, schema.unit, unit), allowed: convert(allowed, schema.unit, unit) }
}

function convert(text: string, stored: string, unit: ShownUnit): string {
  const behind = `${stored.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')}(?![\\w/·²³^])`
  const shown = (figure: string) => formatPlain(unit.toShown(Number(figure)), DIGITS)
  return text
    .replace(
      new RegExp(`(${NUMBER}) to (${NUMBER}) ${behind}`, 'g'),
      (_, a: string, b: string) => `${shown(a)} to ${withUnit(shown(b), unit.symbol)}`,
    )
    .replace(new RegExp(`(${NUMBER}) ${behind}`, 'g'), (_, a: string) => withUnit(shown(a), unit.symbol))
}
