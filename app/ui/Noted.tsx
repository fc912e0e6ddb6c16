import { type KeyboardEvent, type ReactNode, useId } from 'react'

interface Props {
  children: ReactNode
  note: string
  /** One of several that `walkNotes` goes through; only the first of them is reached with Tab. */
  place?: number
}

/** A name with a note on it: seen when it is pointed at, focused or pressed; Escape takes it away. */
export function Noted({ children, note, place = 0 }: Props) {
  const id = useId()
  return (
    <span className="noted">
      <button
        type="button"
        aria-describedby={id}
        tabIndex={place === 0 ? undefined : -1}
        onKeyDown={(event) => event.key === 'Escape' && event.currentTarget.blur()}
      >
        {children}
      </button>
      <span role="tooltip" id={id}>
        {note}
        {place === 0 && <span className="noted-hint"> Arrow keys: the others.</span>}
      </span>
    </span>
  )
}

const STEPS: Record<string, number> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }

/** Key handler of what holds several of them. */
export function walkNotes(event: KeyboardEvent<HTMLElement>) {
  const step = STEPS[event.key]
  const all = [...event.currentTarget.querySelectorAll<HTMLButtonElement>('.noted > button')]
  const at = all.indexOf(document.activeElement as HTMLButtonElement)
  const next = step === undefined || at < 0 ? undefined : all[at + step]
  if (!next) return
  event.preventDefault()
  next.focus()
}
