import { exponentOf, readPath } from '../../sim/index.ts'
import type { Field } from '../read/scenario/walk.ts'
import { shownUnit } from '../read/units.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import { NumberField } from '../ui/NumberField.tsx'
import { SymbolText } from '../ui/Symbols.tsx'
import { begin } from './begin.ts'
import { edit, endGesture, useFault } from './refusal.ts'

/** A quantity of the scenario; one that may be left out can be set and taken away. */
export function QuantityField({ field }: { field: Extract<Field, { kind: 'quantity' }> }) {
  const { path, schema, absent } = field
  const value = useScenario((state) => readPath(state.scenario, path)) as number | null | undefined
  const base = useScenario((state) => readPath(state.base, path)) as number | null | undefined
  const exponent = useScenario((state) => exponentOf(state.scenario))
  const system = useView((state) => state.units)
  const fault = useFault(path)

  if (value === null || value === undefined) {
    if (absent === 'never') return null
    const start = () => (base == null ? begin(path, schema) : edit(path, base))
    return (
      <div className="absent">
        <span>
          {schema.title} <SymbolText symbol={schema.symbol} />
        </span>
        <span className="absent-words" title={absent.note}>
          {absent.words}
        </span>
        <Button aria-label={`Set ${schema.title}`} onClick={start}>
          set
        </Button>
        <span className="field-fault" aria-live="polite">
          {fault}
        </span>
      </div>
    )
  }
  return (
    <NumberField
      label={schema.title}
      symbol={schema.symbol}
      unit={shownUnit(schema, system, exponent)}
      value={value}
      min={schema.minimum}
      max={schema.maximum}
      integer={schema.type === 'integer'}
      usual={schema.usual}
      resetTo={base ?? undefined}
      note={absent !== 'never' && absent.value === null ? absent.note : schema.description}
      fault={fault}
      id={path}
      onEdit={(next, gesture, typed) => edit(path, next, gesture, typed)}
      onEnd={endGesture}
      clear={absent === 'never' ? undefined : { words: absent.words, act: () => edit(path, absent.value) }}
    />
  )
}
