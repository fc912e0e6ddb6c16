/** The registry of what jobs say to logs. */
import type { JobId, Scenario } from '../../scenario/index.ts'
import { capLog } from './cap.ts'
import { gripLog } from './grip.ts'
import type { JobLog } from './job.ts'
import { pressLog } from './press.ts'
import { webLog } from './web.ts'

export const JOB_LOGS: Record<JobId, JobLog> = {
  grip: gripLog as unknown as JobLog,
  press: pressLog as unknown as JobLog,
  cap: capLog as unknown as JobLog,
  web: webLog as unknown as JobLog,
}

/** What the job of a scenario says to logs. */
export const logOf = ({ job }: Pick<Scenario, 'job'>): JobLog => JOB_LOGS[job]
