/** The registry of what is said of each job; `sim/others.ts` enrols what is said of jobs other than gripping. */
import { jobOf } from '../job/index.ts'
import type { JobResult } from '../job/job.ts'
import type { JobId, Scenario } from '../scenario/index.ts'
import { gripWords } from './grip.ts'
import type { JobWords, WhyFigureWords } from './job.ts'
import type { Wording } from './wording.ts'

export const JOB_WORDS = { grip: gripWords } as unknown as Record<JobId, JobWords>

/** What is said of the job of a scenario. */
export const jobWords = <R extends JobResult>({ job }: Pick<Scenario, 'job'>) =>
  JOB_WORDS[job] as unknown as JobWords<R>

/** How studies speak of a job. */
export const studyWords = (job: JobId): JobWords['study'] => JOB_WORDS[job].study

/** How what would save it speaks of a job's work. */
export const rescueWords = (job: JobId): JobWords['rescue'] => JOB_WORDS[job].rescue

/** How the loops speak of what a job's output presses on. */
export const loopWords = (job: JobId): JobWords['loops'] => JOB_WORDS[job].loops

/** How a measured log speaks of what the output of a job meets. */
export const logWords = (job: JobId): JobWords['log'] => JOB_WORDS[job].log

/** What the figure is called that an answer to why has taken apart. */
export const whyFigure = ({ job, figure }: { job: JobId; figure: string }): WhyFigureWords =>
  JOB_WORDS[job].why.figures[figure]!

/** An effort of a job, in the unit of its output. */
export const effortIn =
  (scenario: Pick<Scenario, 'job'>, words: Wording) =>
  (effort: number): string =>
    words.of({ unit: jobOf(scenario).output.effort }, effort)
