import { type FormEvent, useId, useState } from 'react'
import type { Lesson, LessonFigure } from '../../../sim/index.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { shownUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { NumberField } from '../../ui/NumberField.tsx'
import { type Figures, Prose } from './prose.tsx'

interface Props {
  lesson: Lesson
  figures: Figures
  asked: LessonFigure | null
  running: boolean
  /** The choice that the runs bear out, once it is known. */
  rightChoice: number | null
  onAnswer(answer: number): void
}

/** The question, and a way to answer it before it is run. */
export function QuestionForm({ lesson, figures, asked, running, rightChoice, onAnswer }: Props) {
  const { question } = lesson
  const [answer, setAnswer] = useState<number | null>(question.kind === 'choice' ? null : question.start)
  const [missing, setMissing] = useState(false)
  const change = (next: number) => {
    setAnswer(next)
    setMissing(false)
  }
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    // A number that is refused is not run with the one before it.
    if (event.currentTarget.querySelector('[aria-invalid]')) return
    setMissing(answer === null)
    if (answer !== null) onAnswer(answer)
  }
  return (
    <form className="lesson-question" aria-label="Question" onSubmit={submit}>
      {question.kind === 'choice' ? (
        <Choices {...{ lesson, figures, answer, rightChoice }} onChoose={change} />
      ) : (
        <>
          <p className="lesson-ask">
            <Prose text={question.ask} figures={figures} />
          </p>
          {asked && <Quantity {...{ lesson, asked }} value={answer ?? question.start} onEdit={change} />}
        </>
      )}
      <Button className="lesson-run" type="submit" aria-busy={running}>
        {running ? 'Running …' : 'Run it'}
      </Button>
      <p className="lesson-missing" role="alert">
        {missing && 'Choose an answer first; then run it.'}
      </p>
    </form>
  )
}

interface ChoicesProps {
  lesson: Lesson
  figures: Figures
  answer: number | null
  rightChoice: number | null
  onChoose(choice: number): void
}

function Choices({ lesson: { question }, figures, answer, rightChoice, onChoose }: ChoicesProps) {
  const name = useId()
  if (question.kind !== 'choice') return null
  return (
    <fieldset className="lesson-choices">
      <legend className="lesson-ask">
        <Prose text={question.ask} figures={figures} />
      </legend>
      {question.choices.map(({ text }, place) => (
        <label key={text}>
          <input type="radio" name={name} checked={answer === place} onChange={() => onChoose(place)} />
          <span>
            <Prose text={text} figures={figures} />
            {rightChoice === place && <span className="lesson-shown"> · what the runs show</span>}
          </span>
        </label>
      ))}
    </fieldset>
  )
}

interface QuantityProps {
  lesson: Lesson
  asked: LessonFigure
  value: number
  onEdit(value: number): void
}

/** A number to be guessed, or a parameter of the scenario to be set. */
function Quantity({ lesson: { question }, asked, value, onEdit }: QuantityProps) {
  const units = useView((state) => state.units)
  if (question.kind === 'choice') return null
  const field = question.kind === 'slider' ? schemaAt(question.path) : undefined
  return (
    <NumberField
      label={question.kind === 'number' ? question.label : asked.label}
      symbol={field?.symbol}
      note={field?.description}
      unit={shownUnit(asked, units, asked.exponent)}
      value={value}
      min={question.min}
      max={question.max}
      onEdit={onEdit}
    />
  )
}

const KINDS = ['screw', 'rack', 'direct'] as const

/** Whichever kind of actuator has it: the words are the same. */
function schemaAt(path: string) {
  const field = KINDS.map((kind) => fieldAt(kind, path)).find((each) => each?.kind === 'quantity')
  return field?.kind === 'quantity' ? field.schema : undefined
}
