/** The registry of what jobs say to the loops. */
import type { JobId, Scenario } from '../../scenario/index.ts'
import { capLoops } from './cap.ts'
import { gripLoops } from './grip.ts'
import type { JobLoops } from './job.ts'
import { pressLoops } from './press.ts'
import { webLoops } from './web.ts'

export const JOB_LOOPS: Record<JobId, JobLoops> = {
  grip: gripLoops as unknown as JobLoops,
  press: pressLoops as unknown as JobLoops,
  cap: capLoops as unknown as JobLoops,
  web: webLoops as unknown as JobLoops,
}

/** What the job of a scenario says to the loops. */
export const loopsOf = ({ job }: Pick<Scenario, 'job'>): JobLoops => JOB_LOOPS[job]
