/** A frequency in the unit of the loops, with the other beside it. */
import { formatFigure, withUnit } from '../../ui/format.ts'

/** `omega` [rad/s], as rad/s with Hz in brackets. */
export const frequencyText = (omega: number | null, digits = 3) =>
  omega === null || !Number.isFinite(omega)
    ? formatFigure(null)
    : `${withUnit(formatFigure(omega, digits), 'rad/s')} (${withUnit(formatFigure(omega / (2 * Math.PI), digits), 'Hz')})`

/** The axis of a chart over frequency; what lies between two cursors on it is a ratio. */
export const FREQUENCY = {
  title: 'Frequency',
  figure: (omega: number) => frequencyText(omega),
  difference: (from: number, to: number) => `× ${formatFigure(to / from)}`,
}
