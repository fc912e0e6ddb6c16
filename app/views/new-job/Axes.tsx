import { Fragment } from 'react'
import { AXIS_PRESETS, axisEfforts, type QuantitySchema, SCHEMAS } from '../../../sim/index.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { quantityUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { AskField } from './AskField.tsx'
import { jobOf, suggestedForce, useDraft, windowOf } from './draft.ts'

const FORCE: QuantitySchema = {
  type: 'number',
  title: 'Wanted grip force',
  symbol: 'F',
  unit: 'N',
  minimum: 0.001,
  maximum: 1e6,
  description: 'Normal force at one contact that every strategy is set to.',
}

const FAMILIES = Object.keys(SCHEMAS).flatMap((kind) => {
  const field = fieldAt(kind as keyof typeof SCHEMAS, 'actuator.family')
  return field?.kind === 'choice' ? field.options.map(({ value, label }) => ({ kind, family: value, label })) : []
})

/** Generic axes by family, with the force of each beside the wanted one. */
export function Axes() {
  const draft = useDraft()
  const units = useView((state) => state.units)
  const job = jobOf(draft)
  const suggested = suggestedForce(windowOf(draft))
  const wanted = draft.force ?? suggested
  const { symbol, toShown } = quantityUnit('force', units)
  if (!job.ok) return null
  return (
    <>
      <AskField
        schema={FORCE}
        note={`${FORCE.description} The window suggests ${suggested === null ? 'none' : `${formatFigure(toShown(suggested))} ${symbol}`}.`}
        value={wanted}
        needed
        onTake={(force) => useDraft.setState({ force })}
      />
      <p>
        Generic data, no maker’s; every figure can be changed on the bench, and Actuators compares all of them there.
      </p>
      <fieldset className="ask-axes">
        <legend>Which axis?</legend>
        <p aria-hidden="true" className="ask-axes-head">
          <span>Continuous and peak force, {symbol}</span>
        </p>
        {FAMILIES.map(({ kind, family, label }) => (
          <Fragment key={`${kind}/${family}`}>
            <h3>{label}</h3>
            {AXIS_PRESETS.filter(({ actuator }) => actuator.kind === kind && actuator.family === family).map(
              ({ id, title, actuator }) => {
                const { continuous, peak } = axisEfforts(job.scenario, actuator)
                const figures = [continuous, peak].map((force) => formatFigure(toShown(force)))
                return (
                  <label key={id}>
                    <input
                      type="radio"
                      name="new-job-axis"
                      checked={draft.axis === id}
                      onChange={() => useDraft.setState({ axis: id })}
                    />
                    <span className="ask-axis-title">{title}</span>
                    <span className="ask-axis-force">
                      <span className="sr-only">continuous and peak force in {symbol}: </span>
                      {figures.join(' · ')}
                    </span>
                    <span className="ask-axis-word">{reach(wanted, continuous, peak)}</span>
                  </label>
                )
              },
            )}
          </Fragment>
        ))}
      </fieldset>
    </>
  )
}

const reach = (wanted: number | null, continuous: number, peak: number) =>
  wanted === null ? '' : wanted <= continuous ? 'continuously' : wanted <= peak ? 'for a short time' : 'too weak'
