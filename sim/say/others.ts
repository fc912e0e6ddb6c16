/** What is said of the jobs other than gripping. */
import type { JobId } from '../scenario/index.ts'
import { capWords } from './cap.ts'
import type { JobWords } from './job.ts'
import { pressWords } from './press.ts'
import { webWords } from './web.ts'

export const OTHER_WORDS: Record<Exclude<JobId, 'grip'>, JobWords> = {
  press: pressWords as unknown as JobWords,
  cap: capWords as unknown as JobWords,
  web: webWords as unknown as JobWords,
}
