/** Units on the page: those of the simulator's sentences. */
import { jobOf, type Scenario, type ShownUnit, shownUnit, type UnitSystem } from '../../sim/index.ts'

export { knowsUnit, type Quantity, quantityUnit, shownUnit, type UnitSystem } from '../../sim/index.ts'

/** Of what the job of a scenario holds against its window. */
export const effortUnit = (scenario: Pick<Scenario, 'job'>, units: UnitSystem): ShownUnit =>
  shownUnit({ unit: jobOf(scenario).output.effort }, units)
