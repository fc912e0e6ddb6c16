/** What has been told of a new job so far, of each kind by itself, so that a look at another kind loses nothing. */
import { create } from 'zustand'
import { type Answers, BLANK, type JobId } from '../../../sim/index.ts'

interface Drafts {
  /** Null: not chosen yet. */
  job: JobId | null
  answers: Partial<Record<JobId, Answers>>
}

const NOTHING: Drafts = { job: null, answers: {} }

export const useDrafts = create<Drafts>()(() => NOTHING)

export const chooseJob = (job: JobId) => useDrafts.setState({ job })

export const useAnswers = (job: JobId): Answers => useDrafts(({ answers }) => answers[job] ?? BLANK)

export const tell = (job: JobId, told: Partial<Answers>) =>
  useDrafts.setState(({ answers }) => ({ answers: { ...answers, [job]: { ...(answers[job] ?? BLANK), ...told } } }))

export const tellFigure = (job: JobId, id: string, value: number | null) =>
  tell(job, { figures: { ...useDrafts.getState().answers[job]?.figures, [id]: value } })

export const tellChoice = (job: JobId, id: string, value: string) =>
  tell(job, { choices: { ...useDrafts.getState().answers[job]?.choices, [id]: value } })

/** Of one kind; what was told of the others stays. */
export const forgetDraft = (job: JobId) =>
  useDrafts.setState(({ answers }) => ({ job: null, answers: { ...answers, [job]: BLANK } }))
