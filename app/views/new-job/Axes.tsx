import { Fragment } from 'react'
import {
  type Actuator,
  axesFor,
  axisEfforts,
  edgesAsked,
  type JobId,
  NEW_JOBS,
  suggestedEffort,
  workAsked,
} from '../../../sim/index.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { effortUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { AskField } from './AskField.tsx'
import { tell, useAnswers } from './draft.ts'

const familyOf = (job: JobId, { kind, family }: Actuator): string => {
  const field = fieldAt(kind, 'actuator.family', job)
  return (field?.kind === 'choice' && field.options.find(({ value }) => value === family)?.label) || family
}

/** Generic axes that can do the job, by family, with the effort of each beside the wanted one. */
export function Axes({ job }: { job: JobId }) {
  const answers = useAnswers(job)
  const units = useView((state) => state.units)
  const work = workAsked(job, answers)
  const { effort } = NEW_JOBS[job]
  const suggested = suggestedEffort(edgesAsked(job, answers))
  const wanted = answers.effort ?? suggested
  const { symbol, toShown } = effortUnit({ job }, units)
  if (!work.ok) return <p>Comes once the figures above go together.</p>
  const suggests = suggested === null ? 'none' : `${formatFigure(toShown(suggested))} ${symbol}`
  const axes = axesFor(job)
  const families = [...new Set(axes.map(({ actuator }) => familyOf(job, actuator)))]
  const quantity = effort.unit === 'N' ? 'force' : 'torque'
  return (
    <>
      <AskField
        schema={effort}
        note={`${effort.description} The window suggests ${suggests}.`}
        value={wanted}
        needed
        onTake={(value) => tell(job, { effort: value })}
      />
      <p>
        Generic data, no maker’s; every figure can be changed on the bench, and Actuators compares all of them there.
      </p>
      <fieldset className="ask-axes">
        <legend>Which axis?</legend>
        <p aria-hidden="true" className="ask-axes-head">
          <span>
            Continuous and peak {quantity}, {symbol}
          </span>
        </p>
        {families.map((family) => (
          <Fragment key={family}>
            <h3>{family}</h3>
            {axes
              .filter(({ actuator }) => familyOf(job, actuator) === family)
              .map(({ id, title, actuator }) => {
                const { continuous, peak } = axisEfforts(work.scenario, actuator)
                return (
                  <label key={id}>
                    <input
                      type="radio"
                      name="new-job-axis"
                      checked={answers.axis === id}
                      onChange={() => tell(job, { axis: id })}
                    />
                    <span className="ask-axis-title">{title}</span>
                    <span className="ask-axis-force">
                      <span className="sr-only">
                        continuous and peak {quantity} in {symbol}:{' '}
                      </span>
                      {[continuous, peak].map((each) => formatFigure(toShown(each))).join(' · ')}
                    </span>
                    <span className="ask-axis-word">{reach(wanted, continuous, peak)}</span>
                  </label>
                )
              })}
          </Fragment>
        ))}
      </fieldset>
    </>
  )
}

const reach = (wanted: number | null, continuous: number, peak: number) =>
  wanted === null ? '' : wanted <= continuous ? 'continuously' : wanted <= peak ? 'for a short time' : 'too weak'
