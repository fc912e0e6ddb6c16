/** How counter-runs differ from the run that they are held against, as a person reads it. */
import type { Outcome } from '../../../sim/index.ts'
import { formatFigure, NO_FIGURE } from '../../ui/format.ts'
import { roundTo } from '../../ui/number.ts'

/** Changes below a hundredth of a percent are shown as none. */
const GRAIN = 0.01

/** Relative change; null where one of the two does not exist. */
export const changeOf = (value: number | null, from: number | null): number | null =>
  value === null || !from ? null : value / from - 1

/** A share as percent with its sign. */
export function percent(change: number | null): string {
  if (change === null) return NO_FIGURE
  const rounded = roundTo(100 * change, GRAIN)
  return `${rounded > 0 ? '+' : ''}${formatFigure(rounded, Math.abs(rounded) < 1 ? 2 : 3)}\u00a0%`
}

/** The verdict is another one. */
export const turned = (outcome: Outcome, base: Outcome) => outcome.verdict !== base.verdict
