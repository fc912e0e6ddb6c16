/** What is told of a simulated step. Knows no React. */
import type { Bound, LoopId, SimulatedStep, SimulatedSteps } from '../../../sim/index.ts'
import { type Quantity, quantityUnit, type UnitSystem } from '../../read/units.ts'
import { formatFigure } from '../../ui/format.ts'
import type { ShownUnit } from '../../ui/unit.ts'

const QUANTITIES: Record<LoopId, Quantity> = {
  current: 'current',
  position: 'smallLength',
  velocity: 'speed',
  force: 'force',
}

export const stepUnit = (loop: LoopId, system: UnitSystem): ShownUnit => quantityUnit(QUANTITIES[loop], system)

const BOUNDS: Record<Bound, string> = {
  current: 'current limit',
  voltage: 'voltage limit',
  speed: 'speed limit',
  acceleration: 'approach acceleration',
  'dead-band': 'dead band',
  contact: 'a jaw lifts off',
  part: 'the part breaks or dents',
}

const GRAINS: Record<LoopId, string> = {
  current: 'measured current, noise or step',
  position: 'encoder step',
  velocity: 'encoder step',
  force: 'gauge, noise or step',
}

/** Share of the step from which on the steps of a measurement show in the answer. */
const COARSE = 0.05

/** Where a step left the linear range; empty: nowhere. */
export function remarks({ loop, grain, friction }: SimulatedSteps, { size, bounds }: SimulatedStep): string[] {
  const share = grain / Math.abs(size)
  const coarse = share >= COARSE ? [`${GRAINS[loop]} ${formatFigure(100 * share, 2)} %`] : []
  return [...(friction ? ['dry friction'] : []), ...bounds.map((bound) => BOUNDS[bound]), ...coarse]
}
