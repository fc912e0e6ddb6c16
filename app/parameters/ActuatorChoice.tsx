import { type ActuatorKind, SCHEMAS } from '../../sim/index.ts'
import { carryOver, fieldAt } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { Pick } from '../ui/Choice.tsx'
import { edit, useFault } from './refusal.ts'

const KINDS = Object.keys(SCHEMAS) as ActuatorKind[]

const families = (kind: ActuatorKind) => {
  const field = fieldAt(kind, 'actuator.family')
  return field?.kind === 'choice'
    ? field.options.map((option) => ({ value: `${kind}/${option.value}`, label: option.label }))
    : []
}

const OPTIONS = KINDS.flatMap(families)

const kindTitle = (value: string) => {
  const field = fieldAt(value.split('/')[0] as ActuatorKind, 'actuator')
  return field?.kind === 'group' ? field.title : value
}

/** Kind and family of the actuator in one list. Another kind keeps what means the same there and takes its defaults for the rest. */
export function ActuatorChoice() {
  const value = useScenario((state) => `${state.scenario.actuator.kind}/${state.scenario.actuator.family}`)
  const fault = useFault('actuator')
  const choose = (choice: string) => {
    const [kind, family] = choice.split('/') as [ActuatorKind, string]
    const { actuator } = useScenario.getState().scenario
    if (kind === actuator.kind) return edit('actuator', { ...actuator, family })
    const field = fieldAt(kind, 'actuator')
    const kept = field?.kind === 'group' ? carryOver(actuator, field.fields) : {}
    edit('actuator', { ...kept, kind, family })
  }
  return (
    <div className="actuator-choice">
      <Pick
        label="Actuator"
        options={OPTIONS}
        value={value}
        onChoose={choose}
        heading={kindTitle}
        note="How motor and transmission are built. Another kind keeps the figures that mean the same and takes usual ones for the rest."
      />
      <span className="field-fault" aria-live="polite">
        {fault}
      </span>
    </div>
  )
}
