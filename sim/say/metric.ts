/** Metrics as bench, report and command line write them, the same to the last digit. */
import type { Figure, JobResult, RunResult } from '../job/job.ts'
import { DIGITS, formatFigure, inPlainSpaces, NO_FIGURE } from './figure.ts'
import { shownUnit, type UnitSource, type UnitSystem } from './units.ts'

export interface Grained extends UnitSource {
  /** Finest step worth reading [SI]. */
  grain?: number
}

/** A value [SI] as far as it is worth printing: rounded to its grain, and how many significant digits are left; 0 for a zero. */
export function worth({ grain }: Pick<Grained, 'grain'>, value: number): { value: number; digits: number } {
  if (!grain) return { value, digits: value === 0 ? 0 : DIGITS }
  const steps = Math.round(value / grain)
  return { value: steps * grain, digits: steps === 0 ? 0 : Math.min(DIGITS, String(Math.abs(steps)).length) }
}

/** A value [SI] in the unit that is read, with its zeros: 52.0; a dash where there is none. */
export function metricText(
  metric: Grained,
  value: number | null,
  system: UnitSystem,
): { text: string; symbol: string } {
  const { symbol, toShown } = shownUnit(metric, system)
  if (value === null) return { symbol, text: NO_FIGURE }
  const { value: rounded, digits } = worth(metric, value)
  return { symbol, text: formatFigure(toShown(rounded), digits || DIGITS) }
}

/** How far the integration step puts a figure off, either way, ≈ where chance decides it; null where that is not known. */
export function stepErrorOf<R extends JobResult>(metric: Figure<R>, result: RunResult<R>, system: UnitSystem) {
  const { stepErrors, scattered } = result
  const error = stepErrors?.[metric.id]
  if (error === undefined) return null
  const { symbol, toShown } = shownUnit(metric, system)
  const text = formatFigure(Math.abs(toShown(error) - toShown(0)), 2)
  return { symbol, text: scattered.includes(metric.id) ? `≈ ${text}` : text }
}

/** For the columns of a command line, in SI. */
export const plainMetric = <R extends JobResult>(metric: Figure<R>, result: RunResult<R>): string =>
  inPlainSpaces(metricText(metric, metric.value(result), 'si').text)
