/** Draws what `walk` read from the schema. */
import { memo } from 'react'
import { readPath } from '../../sim/index.ts'
import type { Field } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { Button } from '../ui/Button.tsx'
import { Choice } from '../ui/Choice.tsx'
import { begin } from './begin.ts'
import { Fold } from './Fold.tsx'
import { MoveList } from './MoveList.tsx'
import { QuantityField } from './QuantityField.tsx'
import { edit } from './refusal.ts'
import { TextField } from './TextField.tsx'

export function Fields({ fields }: { fields: Field[] }) {
  return fields.map((field) => <FieldView key={field.path} field={field} />)
}

/** A field follows its own value; that another one changed is nothing to it. */
const FieldView = memo(function FieldView({ field }: { field: Field }) {
  if (field.kind === 'quantity') return <QuantityField field={field} />
  if (field.kind === 'choice') return <ChoiceField field={field} />
  if (field.kind === 'text') return <TextField field={field} />
  if (field.kind === 'list') return <MoveList field={field} draw={(fields) => <Fields fields={fields} />} />
  return field.absent === 'never' ? (
    <Fold id={field.path} title={field.title} level="group">
      <Fields fields={field.fields} />
    </Fold>
  ) : (
    <OptionalGroup field={field} />
  )
})

function ChoiceField({ field }: { field: Extract<Field, { kind: 'choice' }> }) {
  const value = useScenario((state) => readPath(state.scenario, field.path))
  const options = field.options.map((option) => ({ value: String(option.value), label: option.label }))
  const choose = (text: string) =>
    edit(field.path, field.options.find((option) => String(option.value) === text)?.value)
  return <Choice label={field.title} options={options} value={String(value)} onChoose={choose} note={field.note} />
}

function OptionalGroup({ field }: { field: Extract<Field, { kind: 'group' }> }) {
  const set = useScenario((state) => readPath(state.scenario, field.path) != null)
  const { absent } = field
  if (absent === 'never') return null
  if (!set) {
    return (
      <div className="absent">
        <span>{field.title}</span>
        <span className="absent-words">{absent.words}</span>
        <Button aria-label={`Set ${field.title}`} onClick={() => begin(field.path)}>
          set
        </Button>
      </div>
    )
  }
  return (
    <fieldset className="set">
      <legend>{field.title}</legend>
      <Button
        quiet
        className="set-remove"
        aria-label={`Remove ${field.title}`}
        onClick={() => edit(field.path, absent.value)}
      >
        remove
      </Button>
      <Fields fields={field.fields} />
    </fieldset>
  )
}
