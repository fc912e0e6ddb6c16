import { useEffect, useRef } from 'react'
import { type Goal, type Judgement, type Lesson, type LessonFigure, lessonFigureText } from '../../../sim/index.ts'
import type { UnitSystem } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { Prose } from './prose.tsx'

interface Props {
  lesson: Lesson
  judgement: Judgement
  answer: number
  /** What is right may be told; else there is a hint. */
  revealed: boolean
}

/** Whether the answer was right, by how much it was off, and what the runs say; after the first miss a hint instead. */
export function Judged({ lesson, judgement, answer, revealed }: Props) {
  const { right, figures, goals } = judgement
  const { question } = lesson
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => head.current?.focus(), [judgement])
  const say = question.kind === 'choice' ? question.choices[answer]?.say : undefined
  return (
    <section className="lesson-judged" aria-label="Answer" data-right={right}>
      <h3 ref={head} tabIndex={-1}>
        {right ? 'Right' : 'Not yet'}
        {judgement.off !== null && <small> {offWords(judgement.off, revealed)}</small>}
      </h3>
      {revealed ? (
        <>
          {say && (
            <p>
              <Prose text={say} figures={figures} />
            </p>
          )}
          <p>
            <Prose text={right ? lesson.right : lesson.wrong} figures={figures} />
          </p>
        </>
      ) : (
        <>
          <p>
            <strong>A hint</strong> <Prose text={lesson.hint} figures={figures} />
          </p>
          <p>Answer once more; after that the answer is told.</p>
        </>
      )}
      {goals.length > 0 && <Goals goals={goals} />}
    </section>
  )
}

/** By how much would give the answer away. */
function offWords(off: number, revealed: boolean): string {
  if (!revealed) return off > 0 ? 'too high' : 'too low'
  const size = withUnit(formatFigure(100 * Math.abs(off), 2), '%')
  if (Math.abs(off) < 0.0005) return 'to the digit'
  return `${size} too ${off > 0 ? 'high' : 'low'}`
}

function Goals({ goals }: { goals: Goal[] }) {
  const units = useView((state) => state.units)
  return (
    <table className="lesson-goals">
      <thead>
        <tr>
          <th scope="col">Asked for</th>
          <th scope="col">Came out</th>
          <th scope="col">Met</th>
        </tr>
      </thead>
      <tbody>
        {goals.map((goal) => (
          <tr key={goal.figure.label}>
            <th scope="row">
              {goal.figure.label} {wanted(goal, units)}
            </th>
            <td>{lessonFigureText(goal.figure, units)}</td>
            <td>{goal.met ? 'yes' : `no${missedBy(goal, units)}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

const wanted = ({ above, below, is }: Goal, units: UnitSystem) =>
  [
    above && `above ${lessonFigureText(above, units)}`,
    below && `below ${lessonFigureText(below, units)}`,
    is && `“${is}”`,
  ]
    .filter(Boolean)
    .join(' and ')

/** How far a figure lies beyond the bound that it breaks. */
function missedBy({ figure, above, below }: Goal, units: UnitSystem): string {
  const beyond = (bound: LessonFigure | null, sign: 1 | -1) =>
    typeof figure.value === 'number' && typeof bound?.value === 'number' ? sign * (figure.value - bound.value) : 0
  const distance = Math.max(beyond(above, -1), beyond(below, 1))
  return distance > 0 ? `, by ${lessonFigureText({ ...figure, value: distance, exact: false }, units)}` : ''
}
