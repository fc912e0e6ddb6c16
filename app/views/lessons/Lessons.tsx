import { useEffect, useState } from 'react'
import { faultLine } from '../../../sim/index.ts'
import { useLessons } from '../../store/lessons.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { useNarrow } from '../../ui/useNarrow.ts'
import { Lesson } from './Lesson.tsx'
import { FAULTY, LESSONS } from './lessons.ts'
import './lessons.css'

/** Short lessons on the simulator: a question is answered first and then run. The scenario on the bench is left alone. */
export function Lessons() {
  const narrow = useNarrow()
  const { done } = useLessons()
  const place = useOpenPlace()
  useOwnTime()
  const listed = LESSONS[place]
  const next = LESSONS[place + 1]
  const [unfolded, setUnfolded] = useState(false)
  const open = (id: string) => {
    useLessons.setState({ open: id })
    setUnfolded(false)
  }
  const progress = `${LESSONS.filter(({ id }) => done.includes(id)).length} of ${LESSONS.length} done`
  return (
    <div className="lessons">
      <h1 className="sr-only">Lessons</h1>
      {narrow ? (
        <details
          className="lesson-nav"
          open={unfolded}
          onToggle={({ currentTarget }) => setUnfolded(currentTarget.open)}
        >
          <summary>All lessons, {progress}</summary>
          <List place={place} onChoose={open} />
        </details>
      ) : (
        <div className="lesson-nav">
          <p className="lesson-progress">{progress}</p>
          <List place={place} onChoose={open} />
        </div>
      )}
      {listed && (
        <Lesson key={listed.id} listed={listed} place={place + 1} onNext={next ? () => open(next.id) : null} />
      )}
    </div>
  )
}

/** The lesson that is open stays open while it is answered; at first it is the first that is not done. */
function useOpenPlace(): number {
  const open = useLessons((state) => state.open)
  const [first] = useState(() => {
    const { done } = useLessons.getState()
    return Math.max(
      0,
      LESSONS.findIndex(({ id }) => !done.includes(id)),
    )
  })
  const place = LESSONS.findIndex(({ id }) => id === open)
  return place >= 0 ? place : first
}

/** The cursor in time is shared with the bench, which gets its own back. */
function useOwnTime() {
  useEffect(() => {
    const { time } = useView.getState()
    useView.setState({ playing: false })
    return () => useView.setState({ time, playing: false })
  }, [])
}

function List({ place, onChoose }: { place: number; onChoose(id: string): void }) {
  const { done, tried } = useLessons()
  const mark = (id: string) => (done.includes(id) ? 'done' : tried.includes(id) ? 'tried' : '')
  return (
    <nav aria-label="Lessons">
      <ol className="lesson-list">
        {LESSONS.map(({ id, lesson }, index) => (
          <li key={id}>
            <button type="button" aria-current={index === place ? 'page' : undefined} onClick={() => onChoose(id)}>
              <span>{lesson.title}</span> <small>{mark(id)}</small>
            </button>
          </li>
        ))}
      </ol>
      {FAULTY.map(({ file, faults }) => (
        <div key={file} className="lesson-faulty">
          <p>{file} cannot be shown:</p>
          <ul className="faults">
            {faults.map((fault) => (
              <li key={fault.path}>{faultLine(fault)}</li>
            ))}
          </ul>
        </div>
      ))}
      <Reset />
    </nav>
  )
}

/** Asks once more, because what is forgotten does not come back. */
function Reset() {
  const { done, tried, reset } = useLessons()
  const [asked, setAsked] = useState(false)
  if (done.length + tried.length === 0) return null
  if (!asked)
    return (
      <Button quiet className="lesson-reset" onClick={() => setAsked(true)}>
        Reset progress
      </Button>
    )
  return (
    <p className="lesson-reset">
      Forget all marks?{' '}
      <Button
        autoFocus
        onClick={() => {
          reset()
          setAsked(false)
        }}
      >
        Forget
      </Button>{' '}
      <Button onClick={() => setAsked(false)}>Keep</Button>
    </p>
  )
}
