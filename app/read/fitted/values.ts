/** Fitted quantities as they are written. Knows no React. */
import { exponentOf, LOG_DELAY, quantityAt, type Scenario, shownUnit } from '../../../sim/index.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import type { UnitSystem } from '../units.ts'

/** A fitted quantity in its unit. */
export function fittedWriter(scenario: Scenario, path: string, system: UnitSystem) {
  const source = path === LOG_DELAY ? { unit: 's', shown: 'ms' } : quantityAt(scenario, path)!
  const unit = shownUnit(source, system, exponentOf(scenario))
  return (value: number) => withUnit(formatPlain(unit.toShown(value), 4), unit.symbol)
}
