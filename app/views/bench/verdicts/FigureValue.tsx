import { useId } from 'react'
import { type GripResult, metricText, type Scenario } from '../../../../sim/index.ts'
import type { Figure } from '../../../read/result/figures.ts'
import type { UnitSystem } from '../../../read/units.ts'
import { NO_FIGURE } from '../../../ui/format.ts'

interface Props {
  figure: Figure
  result: GripResult
  scenario: Scenario
  units: UnitSystem
}

/** A figure with its unit in a lighter tone; one that does not exist is a dash that says why when it is focused. */
export function FigureValue({ figure, result, scenario, units }: Props) {
  const why = useId()
  const value = figure.value(result)
  if (value === null)
    return (
      <button type="button" className="no-figure" aria-describedby={why} aria-label={`${figure.label}: no figure`}>
        {NO_FIGURE}
        <span role="tooltip" id={why}>
          {figure.missing(result, scenario)}
        </span>
      </button>
    )
  const { text, symbol } = metricText(figure, value, units)
  return (
    <span className="figure">
      {text} <span className="unit">{symbol}</span>
    </span>
  )
}
