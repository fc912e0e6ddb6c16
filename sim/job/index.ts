/** The registry of jobs: a new one is one folder, one line here and one in `loads.ts`. */
import type { JobId, Scenario } from '../scenario/index.ts'
import { grip } from './grip/index.ts'
import type { Job } from './job.ts'

export const JOBS: Record<JobId, Job> = { grip }

/** The job that a scenario describes. */
export const jobOf = ({ job }: Pick<Scenario, 'job'>): Job => JOBS[job]
