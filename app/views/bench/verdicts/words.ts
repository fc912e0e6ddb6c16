/** How figures and verdicts are written on cards and in tables. */
import type { Verdict } from '../../../../sim/index.ts'
import { formatFigure } from '../../../ui/format.ts'
import { quantityUnit, type UnitSystem } from '../../../ui/units.ts'
import type { Figure } from '../figures.ts'

export const VERDICT_WORDS: Record<Verdict, string> = {
  held: 'Held',
  slipped: 'Slipped',
  dropped: 'Dropped',
  marked: 'Marked',
  crushed: 'Crushed',
  missed: 'Missed',
  unstable: 'Unstable',
}

/** Verdicts that mean a damaged part. */
export const isDamage = (verdict: Verdict) => verdict === 'crushed' || verdict === 'marked'

/** Changes smaller than this share of the figure are rounding, not news. */
const NEWS = 0.002

/** `+3.1 N`: how far a figure lies from another; null where that cannot be said or is nothing. */
export function differenceText(figure: Figure, now: number | null, before: number | null, units: UnitSystem): string | null {
  if (now === null || before === null) return null
  const { symbol, toShown } = quantityUnit(figure.quantity, units)
  const change = toShown(now) - toShown(before)
  if (Math.abs(change) <= NEWS * Math.max(Math.abs(toShown(now)), Math.abs(toShown(before)))) return null
  const text = formatFigure(change, 2)
  return `${change > 0 ? '+' : ''}${text} ${symbol}`
}
