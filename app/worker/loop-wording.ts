/** The sentences about loops in the units of the page. */
import type { LoopWording } from '../../sim/index.ts'
import { shownUnit, type UnitSource, type UnitSystem } from '../read/units.ts'
import { formatPlain, withUnit } from '../ui/format.ts'

export function loopWording(system: UnitSystem): LoopWording {
  const say = (source: UnitSource) => {
    const { symbol, toShown } = shownUnit(source, system)
    return (value: number) => withUnit(formatPlain(toShown(value), 3), symbol)
  }
  return {
    force: say({ unit: 'N' }),
    forceRate: say({ unit: 'N/s' }),
    length: say({ unit: 'm', shown: 'µm' }),
    speed: say({ unit: 'm/s', shown: 'mm/s' }),
    stiffness: say({ unit: 'N/m', shown: 'N/µm' }),
    mass: say({ unit: 'kg' }),
  }
}
