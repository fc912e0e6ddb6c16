/** The plant of the time simulation, linear about a working point: the axis with what its job puts before it. */
import type { Scenario } from '../scenario/index.ts'
import type { PlantModel } from './axis-plant.ts'
import { loopsOf } from './jobs/index.ts'
import type { WorkingPoint } from './jobs/job.ts'
import { workAt } from './working-point.ts'

export const plantModel = (scenario: Scenario, point: WorkingPoint): PlantModel =>
  loopsOf(scenario).plant(workAt(scenario, point), point)
