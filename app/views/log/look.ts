/** How what is measured and what is simulated are drawn in this view. */
import { formatFigure, withUnit } from '../../ui/format.ts'

export const SIMULATED = 'var(--strategy-current-clamp)'
export const BEFORE_DASH = [2, 3]
export const AFTER_DASH = [8, 4]

/** The axis of a chart over frequency [Hz]. */
export const HERTZ = {
  title: 'Frequency',
  figure: (hertz: number) => withUnit(formatFigure(hertz), 'Hz'),
  difference: (from: number, to: number) => `× ${formatFigure(to / from)}`,
}
