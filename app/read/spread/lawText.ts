import { exponentOf, quantityAt, type Scenario, shownUnit, type UnitSystem, type Varied } from '../../../sim/index.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'

/** "normal, 3 %": a law as it stands beside the name of its quantity. */
export function lawText(scenario: Scenario, varied: Varied, units: UnitSystem): string {
  const { path, law, share, sd, within, tolerance, cpk, half, low, high, factor, values } = varied
  const schema = quantityAt(scenario, path)!
  // A difference of temperatures has no offset, so it stays in kelvins.
  const unit = schema.unit === '°C' ? shownUnit({ unit: 'K' }, 'si') : shownUnit(schema, units, exponentOf(scenario))
  const size = (of: number) =>
    share ? `${formatPlain(100 * of, 3)} %` : withUnit(formatPlain(unit.toShown(of), 3), unit.symbol)
  switch (law) {
    case 'normal': {
      const about = sd !== undefined ? size(sd) : `±${size(tolerance!)} at a capability of ${formatPlain(cpk!, 3)}`
      return `normal, ${about}${within === undefined ? '' : `, sorted out beyond ±${size(within)}`}`
    }
    case 'uniform':
      return `uniform, ±${size(half!)}`
    case 'triangular':
      return `triangular, ${size(low!)} to ${size(high!)}`
    case 'lognormal':
      return `lognormal, factor ${formatPlain(factor!, 4)}`
    case 'measured':
      return `measured, ${values!.length} values`
  }
}
