/** A quantity that is asked for: blank until it is given, in any unit; what is refused stays beside its reason. */
import { useId, useState } from 'react'
import type { QuantitySchema } from '../../../sim/index.ts'
import { shownUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { readEntry, seenOf } from '../../ui/entry.ts'
import { formatPlain } from '../../ui/format.ts'
import { SymbolText, UnitText } from '../../ui/Symbols.tsx'

interface Props {
  schema: QuantitySchema
  /** Instead of the schema's own words. */
  label?: string
  note?: string
  /** SI; null: blank. */
  value: number | null
  needed?: boolean
  onTake(value: number | null): void
}

export function AskField({ schema, label = schema.title, note, value, needed = false, onTake }: Props) {
  const id = useId()
  const units = useView((state) => state.units)
  const [draft, setDraft] = useState<string | null>(null)
  const [refusal, setRefusal] = useState('')
  const unit = shownUnit(schema, units)
  const { minimum: min, maximum: max, usual } = schema
  const seen = seenOf({ label, unit, value: value ?? min, min, max, usual, onEdit: () => {} })
  const commit = () => {
    if (draft === null) return
    const read = draft.trim() === '' ? null : readEntry(draft, unit, seen, false)
    setRefusal(read && !read.ok ? read.why : '')
    if (read && !read.ok) return
    setDraft(null)
    onTake(read ? Math.min(max, Math.max(min, unit.toSi(read.value))) : null)
  }
  return (
    <div className="ask-field">
      <label htmlFor={id}>
        {label} {schema.symbol && <SymbolText symbol={schema.symbol} />}
        {!needed && (
          <small> {note === undefined && schema.default !== undefined ? 'if known' : 'if there is one'}</small>
        )}
      </label>
      <input
        id={id}
        className="field-input"
        inputMode="decimal"
        autoComplete="off"
        required={needed}
        aria-describedby={`${id}-note`}
        aria-invalid={refusal ? true : undefined}
        aria-errormessage={refusal ? `${id}-fault` : undefined}
        value={draft ?? (value === null ? '' : formatPlain(unit.toShown(value)))}
        onChange={({ target }) => {
          setDraft(target.value)
          setRefusal('')
        }}
        onKeyDown={({ key }) => key === 'Enter' && commit()}
        onBlur={commit}
      />
      <UnitText symbol={unit.symbol} />
      <small id={`${id}-note`} className="ask-note">
        {note ?? schema.description} {seen.range}
      </small>
      <span id={`${id}-fault`} className="field-fault" aria-live="polite">
        {refusal}
      </span>
    </div>
  )
}
