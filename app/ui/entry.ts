/** What is typed into a number field, stepped by keys or dragged, on its way to a value in SI. */
import { type KeyboardEvent, useRef, useState } from 'react'
import { formatPlain, withUnit } from './format.ts'
import type { NumberFieldProps } from './NumberField.tsx'
import { decade, type Parsed, parseNumber, splitUnit, stepNumber } from './number.ts'
import type { ShownUnit } from './unit.ts'

/** The quantity as it is seen, in the shown unit. */
export interface Seen {
  value: number
  low: number
  high: number
  /** What "reset" goes back to. */
  base: number | undefined
  figure(value: number, digits?: number): string
  allowed: string
  /** Common practice, what is allowed, and where it starts, in a sentence each. */
  range: string
}

export function seenOf({ unit, value, min, max, usual, resetTo }: NumberFieldProps): Seen {
  const [low, high] = [unit.toShown(min), unit.toShown(max)]
  const base = resetTo === undefined ? undefined : unit.toShown(resetTo)
  const figure = (v: number, digits = 4) => withUnit(formatPlain(v, digits), plainSymbol(unit.symbol))
  const allowed = `${formatPlain(low, 4)} to ${figure(high)}`
  const practice = usual?.map((end) => unit.toShown(end))
  const range = `${practice ? `Common practice ${formatPlain(practice[0]!, 3)} to ${figure(practice[1]!, 3)}. ` : ''}Allowed ${allowed}.${base === undefined ? '' : ` Starts at ${figure(base)}.`}`
  return { value: unit.toShown(value), low, high, base, figure, allowed, range }
}

export interface Entry {
  /** What is being typed, or was typed and refused; null: nothing. */
  draft: string | null
  /** Why the last text was refused; '' if it was not. */
  refusal: string
  type(text: string): void
  /** Takes what was typed. */
  commit(): void
  press(event: KeyboardEvent<HTMLInputElement>): void
  /** Begins a gesture, moves within it, or is one by itself; figures are in the shown unit. */
  begin(): void
  take(next: number): void
  once(next: number): void
}

interface Draft {
  text: string
  /** Still being typed; what was refused stays until it is mended or the reason is gone. */
  open: boolean
  /** Why it is no value for this field, and the value that stood here then. */
  why: string
  beside: number
}

/** Edits of one gesture carry the same name, `id` and a number. */
export function useEntry(id: string, props: NumberFieldProps, seen: Seen): Entry {
  const { unit, value, onEdit, onEnd, min, max, integer = false, fault = '' } = props
  const [kept, setDraft] = useState<Draft | null>(null)
  const gesture = useRef('')
  const holds = kept !== null && (kept.open || (kept.why ? kept.beside === value : fault !== ''))
  const draft = holds ? kept : null

  const begin = () => {
    gesture.current = `${id}#${++gestures}`
  }
  const put = (next: number, typed: boolean): boolean => {
    const inside = Math.min(seen.high, Math.max(seen.low, integer ? Math.round(next) : next))
    const si = Math.min(max, Math.max(min, unit.toSi(inside)))
    return (si === value && !fault) || onEdit(si, gesture.current, typed) !== false
  }
  const take = (next: number) => {
    setDraft(null)
    put(next, false)
  }
  const once = (next: number) => {
    begin()
    take(next)
    onEnd?.()
  }
  const commit = () => {
    if (!draft?.open) return
    const read = readEntry(draft.text, unit, seen, integer)
    const refused = { ...draft, open: false, why: read.ok ? '' : read.why, beside: value }
    if (!read.ok) return setDraft(refused)
    begin()
    setDraft(put(read.value, true) ? null : refused)
    onEnd?.()
  }
  const giveUp = (event: KeyboardEvent) => {
    if (!draft && !fault) return
    event.preventDefault()
    event.stopPropagation()
    setDraft(null)
    if (fault) onEdit(value, gesture.current)
  }
  const press = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') return commit()
    if (event.key === 'Escape') return giveUp(event)
    const count = STEPS[event.key]
    if (count === undefined) return
    event.preventDefault()
    const typed = draft === null ? null : readFigure(draft.text, unit)
    if (!event.repeat) begin()
    const smallest = integer ? 1 : smallestStep(seen)
    take(stepNumber(typed?.ok ? typed.value : seen.value, count * (event.shiftKey ? 10 : 1), smallest))
  }
  const type = (text: string) => setDraft({ text, open: true, why: '', beside: value })
  return { draft: draft?.text ?? null, refusal: draft?.why ?? '', type, commit, press, begin, take, once }
}

let gestures = 0

const STEPS: Record<string, number> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

/** Whether a key steps the value. */
export const isStep = (key: string) => key in STEPS

/** A text as a value in the shown unit, or in a sentence why not. */
export function readEntry(
  text: string,
  unit: ShownUnit,
  { low, high, figure, allowed }: Seen,
  integer: boolean,
): Parsed {
  const read = readFigure(text, unit)
  if (!read.ok) return refuse(`${read.why}. Allowed: ${allowed}.`)
  if (read.value < low || read.value > high) return refuse(`Given ${figure(read.value, 6)}. Allowed: ${allowed}.`)
  if (integer && !Number.isInteger(read.value))
    return refuse(`Given ${figure(read.value, 6)}. Allowed: a whole number, ${allowed}.`)
  return read
}

/** A text in the shown unit; another unit may stand behind the figure. */
function readFigure(text: string, unit: ShownUnit): Parsed {
  const own = parseNumber(text, plainSymbol(unit.symbol))
  const { figure, unit: written } = splitUnit(text)
  if (own.ok || written === '' || !unit.typed) return own
  const read = parseNumber(figure)
  if (!read.ok) return read
  const si = unit.typed(read.value, written)
  if (si !== null) return { ok: true, value: unit.toShown(si) }
  const others = unit.others?.() ?? []
  const offered = others.length > 0 ? `write ${others.slice(0, -1).join(', ')} or ${others.at(-1)}` : 'leave it out'
  return refuse(`“${written}” is no unit of this quantity: ${offered}`)
}

const refuse = (why: string) => ({ ok: false as const, why })

/** Powers as plain text, as a person would type them. */
const plainSymbol = (symbol: string) => symbol.replace(/\^1\.5$/, '¹·⁵')

/** The step at zero, in the second digit of a usual value; elsewhere only a floor. */
function smallestStep({ value, base, low, high }: Seen): number {
  if (value !== 0) return Number.MIN_VALUE
  if (base) return 10 ** (decade(Math.abs(base)) - 1)
  return 10 ** (decade(Math.max(Math.abs(low), Math.abs(high))) - (high > 2 ? 5 : 2))
}
