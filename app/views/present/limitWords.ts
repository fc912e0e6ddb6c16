/** What the edges of the force window mean for this part, in a few words each. */
import { damageWord, forceWindow, type Scenario } from '../../../sim/index.ts'
import { quantityUnit, type UnitSystem } from '../../read/units.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'

export function limitWords(scenario: Scenario, units: UnitSystem): { least: string | null; most: string | null } {
  const { symbol, toShown } = quantityUnit('force', units)
  const { least, most } = forceWindow(scenario)
  const force = (value: number) => withUnit(formatPlain(toShown(value), 3), symbol)
  return {
    least: least === null ? null : `drops below ${force(least)}`,
    most: most === null ? null : `${damageWord(scenario)} above ${force(most)}`,
  }
}
