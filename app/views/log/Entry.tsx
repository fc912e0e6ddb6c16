/** A short text that is taken when it is left or with Enter; what is refused stays, with its reason. */
import { useId, useState } from 'react'

interface Props {
  label: string
  value: string
  /** Why it is refused; '' where it is taken. */
  onTake(text: string): string
  className?: string
  placeholder?: string
}

export function Entry({ label, value, onTake, className = '', placeholder }: Props) {
  const id = useId()
  const [draft, setDraft] = useState<string | null>(null)
  const [why, setWhy] = useState('')
  const take = () => {
    if (draft === null) return
    const refusal = draft === value ? '' : onTake(draft)
    setWhy(refusal)
    if (refusal === '') setDraft(null)
  }
  return (
    <span className={`log-entry ${className}`}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        placeholder={placeholder}
        value={draft ?? value}
        aria-invalid={why !== '' || undefined}
        aria-describedby={why === '' ? undefined : `${id}-why`}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take()
          if (event.key !== 'Escape') return
          setDraft(null)
          setWhy('')
        }}
      />
      {why !== '' && (
        <span id={`${id}-why`} className="log-why" role="alert">
          {why}
        </span>
      )}
    </span>
  )
}
