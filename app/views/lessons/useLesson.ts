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
  /** The judgement, the answer it belongs to, and whether what is right may be told. */
  judged: { judgement: Judgement; answer: number; revealed: boolean } | null
}

const START: LessonState = { status: 'running', message: '', runs: [], told: null, judged: null }

/** The first miss brings a hint; from this one on the answer is told. */
const TOLD_FROM = 2

/** Runs a lesson in a worker: the given runs at once, all of them for each answer. `onJudged` hears whether the runs are new ones. */
export function useLesson(lesson: Lesson, onJudged: (judgement: Judgement, played: boolean) => void) {
  const [state, setState] = useState(START)
  const stop = useRef(() => {})
  const misses = useRef(0)
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
              misses.current += judgement.right ? 0 : 1
              const revealed = judgement.right || misses.current >= TOLD_FROM
              // A setting is tried by looking at its runs; those of another question would give its answer away.
              const played = revealed || lesson.question.kind === 'slider'
              const judged = { judgement, answer: answer!, revealed }
              setState((before) => ({ ...before, status: 'ready', judged, runs: played ? runs : before.runs }))
              tell.current(judgement, played)
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
    misses.current = 0
    ask(null)
    return () => stop.current()
  }, [ask])
  return { state, ask }
}
