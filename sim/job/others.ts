/** The jobs other than gripping. */
import type { JobId } from '../scenario/index.ts'
import { cap } from './cap/index.ts'
import type { Job } from './job.ts'
import { press } from './press/index.ts'
import { web } from './web/index.ts'

export const OTHER_JOBS: Record<Exclude<JobId, 'grip'>, Job> = {
  press: press as unknown as Job,
  cap: cap as unknown as Job,
  web: web as unknown as Job,
}
