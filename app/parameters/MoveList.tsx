import type { ReactNode } from 'react'
import { readPath } from '../../sim/index.ts'
import type { Field } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { Button } from '../ui/Button.tsx'
import { begin } from './begin.ts'
import { edit, useFault } from './refusal.ts'

interface MoveListProps {
  field: Extract<Field, { kind: 'list' }>
  /** Draws the fields of one entry. */
  draw(fields: Field[]): ReactNode
}

/** Entries that can be added and removed, each with its own fields. */
export function MoveList({ field, draw }: MoveListProps) {
  const { path, item, longest } = field
  const count = useScenario((state) => (readPath(state.scenario, path) as unknown[]).length)
  const fault = useFault(path)
  const entries = () => readPath(useScenario.getState().scenario, path) as unknown[]
  return (
    <>
      {Array.from({ length: count }, (_, index) => (
        <fieldset className="set" key={index}>
          <legend>
            {item} {index + 1}
          </legend>
          <Button
            quiet
            className="set-remove"
            aria-label={`Remove ${item} ${index + 1}`}
            onClick={() => edit(path, entries().toSpliced(index, 1))}
          >
            remove
          </Button>
          {draw(field.fieldsAt(index))}
        </fieldset>
      ))}
      <div>
        <Button disabled={count >= longest} onClick={() => begin(path, undefined, (first) => [...entries(), first])}>
          Add a {item.toLowerCase()}
        </Button>
        <span className="field-fault" aria-live="polite">
          {fault}
        </span>
      </div>
    </>
  )
}
