import { useEffect, useState } from 'react'
import type { Studies, StudyName } from '../../worker/studies.ts'
import { startStudy } from '../../worker/study.ts'

export interface StudyState<S extends StudyName> {
  /** What the study has handed out so far, of the present input only. */
  items: Studies[S]['item'][]
  status: 'waiting' | 'running' | 'done' | 'failed' | 'stopped'
  /** Why it failed. */
  message: string
  /** Ends it where it stands; what it has found stays. */
  stop(): void
}

interface Known<S extends StudyName> {
  input: Studies[S]['input'] | null
  items: Studies[S]['item'][]
  status: StudyState<S>['status']
  message: string
}

/**
 * A study of `input`, in a worker of its own, from the moment it is not null; another input, compared by identity, ends it and
 * what it has found is forgotten at once, so that no answer is taken for one to another question.
 */
export function useStudy<S extends StudyName>(study: S, input: Studies[S]['input'] | null): StudyState<S> {
  const nothing: Known<S> = { input, items: [], status: input ? 'running' : 'waiting', message: '' }
  const [known, setKnown] = useState<Known<S>>(nothing)
  const [end, setEnd] = useState<() => void>(() => () => {})
  useEffect(() => {
    if (!input) return
    const start: Known<S> = { input, items: [], status: 'running', message: '' }
    setKnown(start)
    const stop = startStudy(study, input, {
      item: (item) => setKnown((before) => ({ ...before, items: [...before.items, item] })),
      done: () => setKnown((before) => ({ ...before, status: 'done' })),
      failed: (message) => setKnown((before) => ({ ...before, status: 'failed', message })),
    })
    setEnd(() => () => {
      stop()
      setKnown((before) => (before.input === input ? { ...before, status: 'stopped' } : before))
    })
    return stop
  }, [study, input])
  const { items, status, message } = known.input === input ? known : nothing
  return { items, status, message, stop: end }
}
