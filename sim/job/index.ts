/**
 * The registry of jobs: a new one is one folder, one line here, one in `loads.ts`, one in the format (`scenario/schema`) and one in
 * what is said of jobs (`say/jobs.ts`).
 */
import type { JobId, Scenario } from '../scenario/index.ts'
import { cap } from './cap/index.ts'
import { grip } from './grip/index.ts'
import type { Job } from './job.ts'
import { press } from './press/index.ts'
import { web } from './web/index.ts'

export const JOBS: Record<JobId, Job> = {
  grip: grip as unknown as Job,
  press: press as unknown as Job,
  cap: cap as unknown as Job,
  web: web as unknown as Job,
}

/** Whether a verdict is the one on work that is done well, of any job. */
export const isWell = (verdict: string): boolean => Object.values(JOBS).some(({ well }) => well === verdict)

/** The job that a scenario describes. */
export const jobOf = ({ job }: Pick<Scenario, 'job'>): Job => JOBS[job]
