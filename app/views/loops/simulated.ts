/** What is told of a simulated step. Knows no React. */
import {
  type Bound,
  type JobId,
  type LoopId,
  loopWords,
  outputUnits,
  type SimulatedStep,
  type SimulatedSteps,
  type WorkBound,
} from '../../../sim/index.ts'
import { shownUnit, type UnitSystem } from '../../read/units.ts'
import { formatFigure } from '../../ui/format.ts'
import type { ShownUnit } from '../../ui/unit.ts'

export function stepUnit(loop: LoopId, job: JobId, system: UnitSystem): ShownUnit {
  const { smallWay, speed, effort } = outputUnits(job)
  const units = { current: { unit: 'A' }, position: smallWay, velocity: speed, force: effort }
  return shownUnit(units[loop], system)
}

const BOUNDS: Record<Exclude<Bound, WorkBound>, string> = {
  current: 'current limit',
  voltage: 'voltage limit',
  speed: 'speed limit',
  acceleration: 'approach acceleration',
  'dead-band': 'dead band',
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
export function remarks(
  { loop, grain, friction }: SimulatedSteps,
  { size, bounds }: SimulatedStep,
  job: JobId,
): string[] {
  const said: Record<Bound, string> = { ...BOUNDS, ...loopWords(job).met }
  const share = grain / Math.abs(size)
  const coarse = share >= COARSE ? [`${GRAINS[loop]} ${formatFigure(100 * share, 2)} %`] : []
  return [...(friction ? ['dry friction'] : []), ...bounds.map((bound) => said[bound]), ...coarse]
}
