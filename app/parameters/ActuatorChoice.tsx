import { useMemo } from 'react'
import { type ActuatorKind, type JobId, kindsTaken } from '../../sim/index.ts'
import { fieldAt } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { Pick } from '../ui/Choice.tsx'

const optionsOf = (job: JobId) =>
  kindsTaken(job).flatMap((kind) => {
    const field = fieldAt(kind, 'actuator.family', job)
    return field?.kind === 'choice'
      ? field.options.map((option) => ({ value: `${kind}/${option.value}`, label: option.label }))
      : []
  })

const kindTitle = (job: JobId) => (value: string) => {
  const field = fieldAt(value.split('/')[0] as ActuatorKind, 'actuator', job)
  return field?.kind === 'group' ? field.title : value
}

/** Kind and family of the actuator in one list. Another one comes with all its own data. */
export function ActuatorChoice() {
  const job = useScenario((state) => state.scenario.job)
  const options = useMemo(() => optionsOf(job), [job])
  const value = useScenario((state) => `${state.scenario.actuator.kind}/${state.scenario.actuator.family}`)
  const choose = async (choice: string) => {
    const [kind = '', family = ''] = choice.split('/')
    const { axisOfFamily, putAxis } = await import('../read/scenario/putAxis.ts')
    const axis = axisOfFamily(kind, family, job)
    if (axis) putAxis(axis)
  }
  return (
    <div className="actuator-choice">
      <Pick
        label="Actuator"
        options={options}
        value={value}
        onChoose={choose}
        heading={kindTitle(job)}
        note="How motor and transmission are built. Another family brings an axis with its own data; gains follow what it moves, settings the effort that the clamp means now."
      />
    </div>
  )
}
