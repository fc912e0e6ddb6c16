/** One of a few: a row of segments where the words are short, else a list to pick from. */
import { useContext, useId } from 'react'
import { NoteContext } from './note.ts'

export interface Option<V extends string> {
  value: V
  label: string
}

interface ChoiceProps<V extends string> {
  label: string
  options: readonly Option<V>[]
  value: V
  onChoose(value: V): void
  note?: string
  /** Leaves the label to screen readers. */
  bare?: boolean
}

/** Most letters in a row of segments. */
const ROW = 30

export function Choice<V extends string>(props: ChoiceProps<V>) {
  const letters = props.options.reduce((sum, option) => sum + option.label.length, 0)
  return letters <= ROW && props.options.length <= 4 ? <Segments {...props} /> : <Pick {...props} />
}

export function Segments<V extends string>({ label, options, value, onChoose, note, bare }: ChoiceProps<V>) {
  const name = useId()
  const showNote = useContext(NoteContext)
  const enter = () => note && showNote?.({ title: label, text: note })
  return (
    <fieldset
      className="choice"
      onPointerEnter={enter}
      onPointerLeave={() => showNote?.(null)}
      onFocus={enter}
      onBlur={() => showNote?.(null)}
    >
      <legend className={bare ? 'sr-only' : 'choice-label'}>{label}</legend>
      <div className="segments">
        {options.map((option) => (
          <label key={option.value} className="segment">
            <input type="radio" name={name} checked={option.value === value} onChange={() => onChoose(option.value)} />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {note && <span className="sr-only">{note}</span>}
    </fieldset>
  )
}

interface PickProps<V extends string> extends ChoiceProps<V> {
  /** Headings under which the options stand, by option value. */
  heading?(value: V): string
}

export function Pick<V extends string>({ label, options, value, onChoose, note, bare, heading }: PickProps<V>) {
  const id = useId()
  const showNote = useContext(NoteContext)
  const enter = () => note && showNote?.({ title: label, text: note })
  const headings = heading ? [...new Set(options.map((option) => heading(option.value)))] : []
  const list = (some: readonly Option<V>[]) =>
    some.map((option) => (
      <option key={option.value} value={option.value}>
        {option.label}
      </option>
    ))
  return (
    <div className="pick" onPointerEnter={enter} onPointerLeave={() => showNote?.(null)}>
      <label className={bare ? 'sr-only' : 'choice-label'} htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        value={value}
        aria-describedby={note ? `${id}-note` : undefined}
        onChange={(event) => onChoose(event.target.value as V)}
        onFocus={enter}
        onBlur={() => showNote?.(null)}
      >
        {heading
          ? headings.map((title) => (
              <optgroup key={title} label={title}>
                {list(options.filter((option) => heading(option.value) === title))}
              </optgroup>
            ))
          : list(options)}
      </select>
      {note && (
        <span id={`${id}-note`} className="sr-only">
          {note}
        </span>
      )}
    </div>
  )
}
