/**
 * The registry of jobs: a new one is one folder, one line in `others.ts` and one in `loads.ts`, one in the format
 * (`scenario/schema/others.ts`) and one in what is said of jobs (`say/others.ts`).
 */
import type { JobId, Scenario } from '../scenario/index.ts'
import { grip } from './grip/index.ts'
import type { Job } from './job.ts'

/** `sim/others.ts` enrols the others, which the page loads when it needs one. */
export const JOBS = { grip } as unknown as Record<JobId, Job>

/** Whether a verdict is the one on work that is done well, of any job. */
export const isWell = (verdict: string): boolean => Object.values(JOBS).some(({ well }) => well === verdict)

/** The job that a scenario describes. */
export const jobOf = ({ job }: Pick<Scenario, 'job'>): Job => JOBS[job]
