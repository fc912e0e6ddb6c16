import { type ActuatorKind, SCHEMAS } from '../../sim/index.ts'
import { fieldAt } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { Pick } from '../ui/Choice.tsx'

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

/** Kind and family of the actuator in one list. Another one comes with all its own data. */
export function ActuatorChoice() {
  const value = useScenario((state) => `${state.scenario.actuator.kind}/${state.scenario.actuator.family}`)
  const choose = async (choice: string) => {
    const [kind = '', family = ''] = choice.split('/')
    const { axisOfFamily, putAxis } = await import('../read/scenario/putAxis.ts')
    const axis = axisOfFamily(kind, family)
    if (axis) putAxis(axis)
  }
  return (
    <div className="actuator-choice">
      <Pick
        label="Actuator"
        options={OPTIONS}
        value={value}
        onChoose={choose}
        heading={kindTitle}
        note="How motor and transmission are built. Another family brings an axis with its own data; gains follow its mass, settings the force that the clamp means now."
      />
    </div>
  )
}
