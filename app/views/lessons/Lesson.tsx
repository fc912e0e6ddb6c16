import { useEffect, useRef } from 'react'
import type { LessonFigure, LessonRun, Lesson as LessonText } from '../../../sim/index.ts'
import { playSpan } from '../../read/stage/moments.ts'
import { useReducedMotion } from '../../read/stage/usePlay.ts'
import { useLessons } from '../../store/lessons.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Judged } from './Judged.tsx'
import { LessonStage, OpenGripper } from './LessonStage.tsx'
import type { ListedLesson } from './lessons.ts'
import { Paragraphs, Prose } from './prose.tsx'
import { QuestionForm } from './QuestionForm.tsx'
import { useLesson } from './useLesson.ts'

interface Props {
  listed: ListedLesson
  place: number
  /** Opens the next one; null: this is the last. */
  onNext: (() => void) | null
}

/** One lesson: what to know, a question, the runs, and what they show. */
export function Lesson({ listed: { id, lesson }, place, onNext }: Props) {
  const still = useReducedMotion()
  const head = useRef<HTMLHeadingElement>(null)
  const { state, ask } = useLesson(lesson, ({ right }, played) => {
    useLessons.getState().answered(id, right)
    if (played && !still) useView.setState({ time: 0, playing: true })
  })
  const { runs, told, judged, status } = state
  useEffect(() => {
    if (useLessons.getState().open !== null) head.current?.focus()
  }, [])
  useStandAtEnd(runs)
  const figures = judged?.judgement.figures ?? told?.figures ?? {}
  const revealed = judged?.revealed ?? false
  return (
    <article className="lesson" aria-labelledby="lesson-title">
      <div className="lesson-read">
        <p className="lesson-place">
          Lesson {place}, about {lesson.minutes} minutes
        </p>
        <h2 id="lesson-title" ref={head} tabIndex={-1}>
          {lesson.title}
        </h2>
        {lesson.caution && (
          <p className="lesson-caution">
            <strong>Caution</strong> <Prose text={lesson.caution} figures={figures} />
          </p>
        )}
        {told ? (
          <>
            <Paragraphs texts={lesson.text} figures={told.figures} />
            <QuestionForm
              lesson={lesson}
              figures={told.figures}
              asked={told.asked}
              running={status === 'running'}
              rightChoice={judged && revealed ? judged.judgement.rightChoice : null}
              onAnswer={ask}
            />
          </>
        ) : (
          <p role="status">{status === 'failed' ? '' : 'The lesson is being set up.'}</p>
        )}
        {status === 'failed' && <p role="alert">The lesson could not be run: {state.message}</p>}
        {judged && <Judged lesson={lesson} {...judged} />}
      </div>
      <div className="lesson-show">
        {runs.length > 0 ? (
          <LessonStage lesson={lesson} runs={runs} figures={figures} />
        ) : (
          told && <OpenGripper scenario={told.scenario} />
        )}
      </div>
      {judged && revealed && <After lesson={lesson} figures={judged.judgement.figures} onNext={onNext} />}
    </article>
  )
}

/** Where nothing plays, the picture stands at the end, with every part still in its jaws. */
function useStandAtEnd(runs: LessonRun[]) {
  useEffect(() => {
    if (useView.getState().playing || runs.length === 0) return
    useView.setState({ time: playSpan(runs, Math.max(...runs.map(({ scenario }) => scenario.run.duration))).rest })
  }, [runs])
}

interface AfterProps extends Pick<Props, 'onNext'> {
  lesson: LessonText
  figures: Record<string, LessonFigure>
}

function After({ lesson, figures, onNext }: AfterProps) {
  return (
    <div className="lesson-after">
      <h3>What it shows</h3>
      <Paragraphs texts={lesson.explanation} figures={figures} />
      {onNext ? (
        <Button className="lesson-next" onClick={onNext}>
          Next lesson
        </Button>
      ) : (
        <p>This was the last lesson.</p>
      )}
    </div>
  )
}
