import { useEffect, useRef, useState } from 'react'
import type { Studies, StudyName } from '../../worker/studies.ts'
import { type KeptStudy, keepStudy } from '../../worker/study.ts'

export interface Answered<T> {
  item: T | null
  busy: boolean
  /** Why there is no answer to the latest input; '' if there is. */
  failure: string
}

/** The answer to an input that changes under a slider: the newest there is, the one before until then. `input` is compared by identity. */
export function useKept<S extends StudyName>(study: S, input: Studies[S]['input']): Answered<Studies[S]['item']> {
  const [answer, setAnswer] = useState<Answered<Studies[S]['item']>>({ item: null, busy: true, failure: '' })
  const kept = useRef<KeptStudy<S>>(null)
  useEffect(() => {
    const opened = keepStudy(study, {
      item: (item) => setAnswer({ item, busy: true, failure: '' }),
      done: () => setAnswer((before) => ({ ...before, busy: false })),
      failed: (failure) => setAnswer((before) => ({ ...before, busy: false, failure })),
    })
    kept.current = opened
    return () => opened.end()
  }, [study])
  useEffect(() => {
    setAnswer((before) => (before.busy ? before : { ...before, busy: true }))
    kept.current?.ask(input)
  }, [input])
  return answer
}
