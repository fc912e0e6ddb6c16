/** A question to a strategy, or to all: which, start, stop, how far it is, and the answer as it grows. */
import { type ReactNode, useEffect } from 'react'
import { STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import type { AskedStore, Subject } from '../../store/asked.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'

interface AskProps<Q, A, S extends Subject> {
  store: AskedStore<Q, A, S>
  question: Q
  /** Another one, by identity, has other answers. */
  about: unknown
  subjects: readonly S[]
  /** Of the section, for who does not see it. */
  name: string
  className: string
  heading: string
  begin: string
  again: string
  /** How far it is. */
  progress(answer: A): string
  failed: string
  /** What is set before it is asked. */
  settings?: ReactNode
  children(answer: A, subject: S, busy: boolean): ReactNode
}

export const labelOf = (strategy: StrategyId) => STRATEGIES.find(({ id }) => id === strategy)!.label

const nameOf = (subject: Subject) => (subject === 'all' ? 'All strategies' : labelOf(subject))

export function Ask<Q, A, S extends Subject>(props: AskProps<Q, A, S>) {
  const { store, question, subjects, about } = props
  const known = store()
  const { choose, ask, stop } = known
  const own = known.about === about
  const { answers, asking, message } = own ? known : { answers: {} as typeof known.answers, asking: null, message: '' }
  const strange = !own && known.asking !== null
  useEffect(() => {
    if (strange) stop()
  }, [strange, stop])
  const subject = known.chosen !== null && subjects.includes(known.chosen) ? known.chosen : subjects[0]!
  const answer = answers[subject]
  const asked = asking && answers[asking]
  return (
    <section className={props.className} aria-label={props.name}>
      <h2>{props.heading}</h2>
      <div className="spread-commands">
        {props.settings}
        <Pick
          label="Strategy"
          options={subjects.map((value) => ({ value, label: nameOf(value) }))}
          value={subject}
          onChoose={choose}
        />
        {asking ? (
          <Button onClick={stop}>Stop</Button>
        ) : (
          <Button onClick={() => ask(question, subject, about)}>{answer ? props.again : props.begin}</Button>
        )}
        <span role="status">
          {asking &&
            `${asking === subject ? '' : `${nameOf(asking)}: `}${asked ? props.progress(asked) : 'gripping …'}`}
        </span>
      </div>
      {message && (
        <p role="alert">
          {props.failed}: {message}
        </p>
      )}
      {answer && props.children(answer, subject, asking === subject)}
    </section>
  )
}
