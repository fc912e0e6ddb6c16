/** A quantity: typed, stepped by keys, dragged on the scale beneath. Its value is SI, what is seen is in the shown unit. */
import { useContext, useId, useState } from 'react'
import { type Entry, isStep, type Seen, seenOf, useEntry } from './entry.ts'
import { formatPlain } from './format.ts'
import { NoteContext } from './note.ts'
import { Scale } from './Scale.tsx'
import { SymbolText, UnitText } from './Symbols.tsx'
import type { ShownUnit } from './unit.ts'

export interface NumberFieldProps {
  label: string
  symbol?: string
  unit: ShownUnit
  /** SI, as are `min`, `max`, `resetTo` and what `onEdit` is given. */
  value: number
  /** Edits of one gesture are one step back for undo; `typed`: not stepped or dragged. False: refused, what was typed stays. */
  onEdit(value: number, gesture: string, typed?: boolean): unknown
  /** The gesture is over. */
  onEnd?(): void
  min: number
  max: number
  /** Whole numbers only. */
  integer?: boolean
  /** Where the quantity lies in most cases. */
  usual?: readonly [number, number] | undefined
  /** What "reset" goes back to; the field shows "reset" while it differs. */
  resetTo?: number
  /** One sentence on what the quantity does. */
  note?: string
  /** Why the last edit was refused, from outside; the field finds out by itself about text that is no number or out of range. */
  fault?: string
  /** For a quantity that may be left out: takes it away. */
  clear?: { words: string; act(): void } | undefined
  id?: string
}

export function NumberField(props: NumberFieldProps) {
  const { label, symbol = '', unit, onEnd, note = '' } = props
  const made = useId()
  const id = props.id ?? made
  const seen = seenOf(props)
  const entry = useEntry(id, props, seen)
  const [active, setActive] = useState(false)
  const showNote = useContext(NoteContext)
  const { value, low, high, base, range } = seen
  const changed = base !== undefined && base !== value
  const fault = entry.refusal || props.fault
  const enter = () => showNote?.({ title: label, text: note, range })
  const leave = () => showNote?.(null)
  const focus = (now: boolean) => {
    setActive(now)
    if (now) enter()
    else leave()
  }
  return (
    <div className="field" data-changed={changed ? '' : undefined} onPointerEnter={enter} onPointerLeave={leave}>
      <label className="field-label" htmlFor={id}>
        {label} {symbol && <SymbolText symbol={symbol} />}
      </label>
      <Input id={id} seen={seen} entry={entry} faulty={Boolean(fault)} onEnd={onEnd} onFocus={focus} />
      <UnitText symbol={unit.symbol} />
      <Scale
        value={value}
        base={base ?? value}
        min={low}
        max={high}
        onBegin={entry.begin}
        onMove={entry.take}
        onEnd={onEnd}
      />
      <span className="field-more">
        {changed && (
          <button type="button" aria-label={`Reset ${label} to ${seen.figure(base)}`} onClick={() => entry.once(base)}>
            reset
          </button>
        )}
        {props.clear && (
          <button type="button" aria-label={`${label}: ${props.clear.words}`} onClick={props.clear.act}>
            {props.clear.words}
          </button>
        )}
      </span>
      <span id={`${id}-note`} className={active && !showNote && note ? 'field-note' : 'sr-only'}>
        {note} {range}
      </span>
      <span id={`${id}-fault`} className="field-fault" aria-live="polite">
        {fault}
      </span>
    </div>
  )
}

interface InputProps {
  id: string
  seen: Seen
  entry: Entry
  faulty: boolean
  onEnd: (() => void) | undefined
  /** It has got the focus, or lost it. */
  onFocus(now: boolean): void
}

function Input({ id, seen: { value, low, high, figure }, entry, faulty, onEnd, onFocus }: InputProps) {
  return (
    <input
      id={id}
      className="field-input"
      role="spinbutton"
      inputMode="decimal"
      autoComplete="off"
      spellCheck={false}
      aria-valuenow={value}
      aria-valuemin={low}
      aria-valuemax={high}
      aria-valuetext={figure(value, 6)}
      aria-describedby={`${id}-note`}
      aria-invalid={faulty ? true : undefined}
      aria-errormessage={faulty ? `${id}-fault` : undefined}
      value={entry.draft ?? formatPlain(value)}
      onChange={(event) => entry.type(event.target.value)}
      onKeyDown={entry.press}
      onKeyUp={(event) => {
        if (isStep(event.key)) onEnd?.()
      }}
      onFocus={(event) => {
        event.target.select()
        onFocus(true)
      }}
      onBlur={() => {
        entry.commit()
        onFocus(false)
      }}
    />
  )
}
