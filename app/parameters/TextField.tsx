import { useState } from 'react'
import { readPath } from '../../sim/index.ts'
import type { Field } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { edit, useFault } from './refusal.ts'

/** Words of the scenario; taken when the person leaves the field. A long text gets several lines. */
export function TextField({ field }: { field: Extract<Field, { kind: 'text' }> }) {
  const { path, title, longest } = field
  const value = useScenario((state) => readPath(state.scenario, path)) as string
  const [draft, setDraft] = useState<string | null>(null)
  const fault = useFault(path)
  const common = {
    id: path,
    value: draft ?? value,
    maxLength: longest,
    onChange: (event: { target: { value: string } }) => setDraft(event.target.value),
    onBlur: () => {
      if (draft !== null && draft !== value) edit(path, draft)
      setDraft(null)
    },
  }
  return (
    <div className="text-field">
      <label htmlFor={path}>{title}</label>
      {longest > 500 ? <textarea rows={4} {...common} /> : <input type="text" {...common} />}
      <span className="field-fault" aria-live="polite">
        {fault}
      </span>
    </div>
  )
}
