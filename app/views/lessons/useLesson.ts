import { useCallback, useEffect, useRef, useState } from 'react'
import type { Judgement, Lesson, LessonFigure, LessonRun, Scenario } from '../../../sim/index.ts'
import { startStudy } from '../../worker/study.ts'
import type { Figures } from './prose.tsx'

export interface LessonState {
  status: 'running' | 'ready' | 'failed'
  message: string
  /** The runs of the newest answer, or the given ones. */
  runs: LessonRun[]
  /** What the text before the question speaks of, in what an answer is given (null for a choice), and the scenario; null: not run yet. */
  told: { figures: Figures; asked: LessonFigure | null; scenario: Scenario } | null
  /** The judgement and the answer it belongs to. */
  judged: { judgement: Judgement; answer: number } | null
}

const START: LessonState = { status: 'running', message: '', runs: [], told: null, judged: null }

/** Runs a lesson in a worker: the given runs at once, all of them for each answer. */
export function useLesson(lesson: Lesson, onJudged: (judgement: Judgement) => void) {
  const [state, setState] = useState(START)
  const stop = useRef(() => {})
  const tell = useRef(onJudged)
  tell.current = onJudged

  const ask = useCallback(
    (answer: number | null) => {
      stop.current()
      const runs: LessonRun[] = []
      setState((before) => ({ ...before, status: 'running', message: '' }))
      stop.current = startStudy(
        'lesson',
        { lesson, answer },
        {
          item(item) {
            if (item.kind === 'run') runs.push(item.run)
            else if (item.kind === 'told') {
              const { figures, asked, scenario } = item
              setState((before) => ({ ...before, status: 'ready', runs, told: { figures, asked, scenario } }))
            } else {
              const { judgement } = item
              setState((before) => ({ ...before, status: 'ready', runs, judged: { judgement, answer: answer! } }))
              tell.current(judgement)
            }
          },
          done() {},
          failed: (message) => setState((before) => ({ ...before, status: 'failed', message })),
        },
      )
    },
    [lesson],
  )
  useEffect(() => {
    setState(START)
    ask(null)
    return () => stop.current()
  }, [ask])
  return { state, ask }
}
