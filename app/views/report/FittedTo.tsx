import {
  freeName,
  LOG_DELAY,
  logsText,
  quantityAt,
  readPath,
  residualText,
  responseName,
  responseText,
  type Scenario,
  untoldText,
  type Wording,
  wordingOf,
} from '../../../sim/index.ts'
import { ValueTable } from '../../read/fitted/ValueTable.tsx'
import { fittedWriter } from '../../read/fitted/values.ts'
import type { UnitSystem } from '../../read/units.ts'
import { type Fitting, stands } from '../../store/fitted.ts'

interface Props {
  fitting: Fitting
  scenario: Scenario
  units: UnitSystem
  /** In a sentence. */
  short: boolean
}

/** What of the axis was fitted to a log: values before and after with their intervals, what is left, and what the log does not tell. */
export function FittedTo({ fitting, scenario, units, short }: Props) {
  const words = wordingOf(units)
  const { names, untold } = fitting
  // An axis of another kind has not all of these.
  const values = fitting.values.filter(({ path }) => path === LOG_DELAY || quantityAt(scenario, path))
  const to = fitting.kind === 'log' ? logsText(fitting.seconds, words) : responseName(fitting.used)
  const changed = values.filter((each) => stands(scenario, each) === false)
  return (
    <section aria-labelledby={short ? 'report-fitted-short' : 'report-fitted'}>
      <h2 id={short ? 'report-fitted-short' : 'report-fitted'}>Fitted to {to}</h2>
      {short ? (
        <p className="report-small">
          {values.length === 1 ? 'One value of the axis comes' : `${values.length} values of the axis come`} from{' '}
          {names.join(', ')}.
        </p>
      ) : (
        <>
          <ValueTable {...{ values, scenario, units }} className="report-table" />
          <p className="report-small">
            {names.join(', ')}. {leftTexts(scenario, fitting, words).join(' ')}{' '}
            {changed.length > 0 && `${changedText(scenario, changed, units)} `}
            {untold.length === 0
              ? 'It tells each of these values apart from the others.'
              : untold.map((each) => untoldText(scenario, each, words)).join(' ')}
          </p>
        </>
      )}
    </section>
  )
}

/** How well the model meets what was measured, a sentence a channel. */
function leftTexts(scenario: Scenario, fitting: Fitting, words: Wording): string[] {
  if (fitting.kind === 'response') return [responseText(fitting, words)]
  const several = fitting.seconds.length > 1
  return fitting.residuals.map((each) => {
    const text = residualText(scenario, each, words)
    return `${several ? `Log ${each.log + 1}, ` : ''}${several ? text : text.charAt(0).toUpperCase() + text.slice(1)}.`
  })
}

/** "Changed since: coulomb friction to 7 N." */
function changedText(scenario: Scenario, changed: Fitting['values'], units: UnitSystem): string {
  const each = changed.map(
    ({ path }) =>
      `${freeName(scenario, path).toLowerCase()} to ${fittedWriter(scenario, path, units)(readPath(scenario, path) as number)}`,
  )
  return `Changed since: ${each.join(', ')}.`
}
