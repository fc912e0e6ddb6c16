/** Units on the page: those of the simulator's sentences. */
import { jobOf, type Quantity, quantityUnit, type Scenario, type ShownUnit, type UnitSystem } from '../../sim/index.ts'

export {
  knowsUnit,
  type Quantity,
  quantityUnit,
  shownUnit,
  type UnitSystem,
} from '../../sim/index.ts'

/** The kind of quantity that a job's effort is. */
export const effortQuantity = (scenario: Pick<Scenario, 'job'>): Quantity =>
  jobOf(scenario).output.effort === 'N·m' ? 'spindleTorque' : 'force'

/** Its unit. */
export const effortUnit = (scenario: Pick<Scenario, 'job'>, units: UnitSystem): ShownUnit =>
  quantityUnit(effortQuantity(scenario), units)
