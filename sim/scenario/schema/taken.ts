/** Which axes can do which job: those for which it has a format. */
import { type ActuatorKind, JOBS, type JobId } from './index.ts'

/** The first job that an axis of a kind can do. */
export const jobTaking = (kind: ActuatorKind): JobId => (Object.keys(JOBS) as JobId[]).find((job) => JOBS[job][kind])!

/** Kinds of axis that can do a job, in the order of its format. */
export const kindsTaken = (job: JobId): ActuatorKind[] => Object.keys(JOBS[job]) as ActuatorKind[]
