/** A quantity: typed, stepped by keys, dragged on the scale beneath. Its value is SI, what is seen is in the shown unit. */
import { type KeyboardEvent, useContext, useId, useRef, useState } from 'react'
import { formatPlain, withUnit } from './format.ts'
import { NoteContext } from './note.ts'
import { decade, parseNumber, stepNumber } from './number.ts'
import { Scale } from './Scale.tsx'
import { SymbolText, UnitText } from './Symbols.tsx'
import type { ShownUnit } from './unit.ts'

export interface NumberFieldProps {
  label: string
  symbol?: string
  unit: ShownUnit
  /** SI, as are `min`, `max`, `resetTo` and what `onEdit` is given. */
  value: number
  /** Edits of one gesture are one step back for undo. */
  onEdit(value: number, gesture: string): void
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

let gestures = 0

export function NumberField(props: NumberFieldProps) {
  const { label, symbol = '', unit, value, onEdit, onEnd, min, max, integer = false, usual, resetTo, note = '' } = props
  const [draft, setDraft] = useState<string | null>(null)
  const [refusal, setRefusal] = useState('')
  const [active, setActive] = useState(false)
  const showNote = useContext(NoteContext)
  const gesture = useRef('')
  const made = useId()
  const id = props.id ?? made

  const [low, high] = [unit.toShown(min), unit.toShown(max)]
  const shown = unit.toShown(value)
  const base = resetTo === undefined ? undefined : unit.toShown(resetTo)
  const figure = (v: number, digits = 4) => withUnit(formatPlain(v, digits), plainSymbol(unit.symbol))
  const allowed = `${formatPlain(low, 4)} to ${figure(high)}`
  const practice = usual?.map((end) => unit.toShown(end))
  const range = `${practice ? `Common practice ${formatPlain(practice[0]!, 3)} to ${figure(practice[1]!, 3)}. ` : ''}Allowed ${allowed}.${base === undefined ? '' : ` Starts at ${figure(base)}.`}`
  const fault = refusal || props.fault

  const begin = () => {
    gesture.current = `${id}#${++gestures}`
  }
  /** `next` is in the shown unit. */
  const take = (next: number) => {
    const inside = Math.min(high, Math.max(low, integer ? Math.round(next) : next))
    setRefusal('')
    const si = Math.min(max, Math.max(min, unit.toSi(inside)))
    if (si !== value) onEdit(si, gesture.current)
  }
  const once = (next: number) => {
    begin()
    take(next)
    onEnd?.()
  }
  const commit = () => {
    if (draft === null) return
    setDraft(null)
    const read = parseNumber(draft, plainSymbol(unit.symbol))
    if (!read.ok) return setRefusal(`${read.why}. Allowed: ${allowed}.`)
    if (read.value < low || read.value > high) return setRefusal(`Given ${figure(read.value, 6)}. Allowed: ${allowed}.`)
    if (integer && !Number.isInteger(read.value))
      return setRefusal(`Given ${figure(read.value, 6)}. Allowed: a whole number, ${allowed}.`)
    once(read.value)
  }
  const press = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') return commit()
    if (event.key === 'Escape') {
      if (draft !== null || refusal) {
        event.preventDefault()
        event.stopPropagation()
      }
      setDraft(null)
      return setRefusal('')
    }
    const count = STEPS[event.key]
    if (count === undefined) return
    event.preventDefault()
    const typed = draft === null ? null : parseNumber(draft, plainSymbol(unit.symbol))
    setDraft(null)
    if (!event.repeat) begin()
    const smallest = integer ? 1 : smallestStep(shown, base, low, high)
    take(stepNumber(typed?.ok ? typed.value : shown, count * (event.shiftKey ? 10 : 1), smallest))
  }
  const enter = () => showNote?.({ title: label, text: note, range })
  const leave = () => showNote?.(null)

  return (
    <div
      className="field"
      data-changed={base !== undefined && base !== shown ? '' : undefined}
      onPointerEnter={enter}
      onPointerLeave={leave}
    >
      <label className="field-label" htmlFor={id}>
        {label} {symbol && <SymbolText symbol={symbol} />}
      </label>
      <input
        id={id}
        className="field-input"
        role="spinbutton"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        aria-valuenow={shown}
        aria-valuemin={low}
        aria-valuemax={high}
        aria-valuetext={figure(shown, 6)}
        aria-describedby={`${id}-note`}
        aria-invalid={fault ? true : undefined}
        aria-errormessage={fault ? `${id}-fault` : undefined}
        value={draft ?? formatPlain(shown)}
        onChange={(event) => {
          setDraft(event.target.value)
          setRefusal('')
        }}
        onKeyDown={press}
        onKeyUp={(event) => {
          if (event.key in STEPS) onEnd?.()
        }}
        onFocus={(event) => {
          event.target.select()
          setActive(true)
          enter()
        }}
        onBlur={() => {
          commit()
          setActive(false)
          leave()
        }}
      />
      <UnitText symbol={unit.symbol} />
      <Scale value={shown} base={base ?? shown} min={low} max={high} onBegin={begin} onMove={take} onEnd={onEnd} />
      <span className="field-more">
        {base !== undefined && base !== shown && (
          <button type="button" aria-label={`Reset ${label} to ${figure(base)}`} onClick={() => once(base)}>
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

const STEPS: Record<string, number> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

/** Powers as plain text, as a person would type them. */
const plainSymbol = (symbol: string) => symbol.replace(/\^1\.5$/, '¹·⁵')

/** The step at zero, in the second digit of a usual value; elsewhere only a floor. */
function smallestStep(value: number, base: number | undefined, low: number, high: number): number {
  if (value !== 0) return Number.MIN_VALUE
  if (base) return 10 ** (decade(Math.abs(base)) - 1)
  return 10 ** (decade(Math.max(Math.abs(low), Math.abs(high))) - (high > 2 ? 5 : 2))
}
