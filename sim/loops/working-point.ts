/** Where the axis is looked at: before it touches anything, and pressing on the softest, the nominal and the stiffest work, and where else a job has reason to. */
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import { loopsOf } from './jobs/index.ts'
import type { WorkingPoint, WorkingPointId } from './jobs/job.ts'

export type { Contact, WorkingPoint, WorkingPointId } from './jobs/job.ts'

export interface WorkingPointOptions {
  /** Share by which the stiffness of the work varies about the nominal one, 0 … 0.99. */
  spread?: number | undefined
  /** Working effort as the gauge measures it [N or N·m]; the target of the sensed-force strategy if left out. */
  force?: number | undefined
}

/** Common practice for work whose spread has not been measured, no source. */
export const STIFFNESS_SPREAD = 0.3

export const workingPointsOf = (scenario: Scenario): readonly WorkingPointId[] => loopsOf(scenario).points(scenario)

/** Stiffness of a working point's work over that of the nominal one. */
const stiffnessFactor = (id: WorkingPointId, spread: number) =>
  id === 'softest' ? 1 - spread : id === 'stiffest' || id === 'relaxed' ? 1 + spread : 1

/** Throws a RangeError for a spread outside 0 … 0.99, a force that is not above 0, or a point that the scenario has not. */
export function workingPoint(scenario: Scenario, id: WorkingPointId, options: WorkingPointOptions = {}): WorkingPoint {
  const { spread = STIFFNESS_SPREAD, force = scenario.strategies.sensedForce.target } = options
  if (!(spread >= 0 && spread <= 0.99)) throw new RangeError(`stiffness spread: given ${spread}, allowed 0 to 0.99`)
  const { effort } = jobOf(scenario).output
  if (!(force > 0 && Number.isFinite(force)))
    throw new RangeError(`working force: given ${force} ${effort}, allowed above 0 ${effort}`)
  const job = loopsOf(scenario)
  const all = job.points(scenario)
  if (!all.includes(id)) throw new RangeError(`working point: given ${id}, allowed ${all.join(', ')}`)
  const factor = stiffnessFactor(id, spread)
  return { id, factor, ...job.point(job.stiffened(scenario, factor), id, force) }
}

/** The scenario with the work of a working point. */
export const workAt = (scenario: Scenario, { factor }: WorkingPoint): Scenario =>
  loopsOf(scenario).stiffened(scenario, factor)
