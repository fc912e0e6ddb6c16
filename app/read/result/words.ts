/** How figures and verdicts are written on cards and in tables. */
import { reasonOf, SI_WORDING, type Verdict, type Wording, worth } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { formatFigure, formatPlain, withUnit } from '../../ui/format.ts'
import { type Quantity, quantityUnit, shownUnit, type UnitSystem } from '../units.ts'
import type { Figure } from './figures.ts'

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

/** A figure in the unit of the page. */
export function figureText(figure: Figure, value: number, units: UnitSystem): { text: string; symbol: string } {
  const { symbol, toShown } = shownUnit(figure, units)
  const { value: rounded, digits } = worth(figure, value)
  return { symbol, text: formatFigure(toShown(rounded), digits) }
}

/** Changes smaller than this share of the figure are rounding, not news. */
const NEWS = 0.002

/** `+3.1 N`: how far a figure lies from another; null where that cannot be said or is nothing. */
export function differenceText(figure: Figure, now: number | null, before: number | null, units: UnitSystem) {
  if (now === null || before === null) return null
  const size = Math.max(Math.abs(now), Math.abs(before))
  if (Math.abs(now - before) <= Math.max(NEWS * size, (figure.grain ?? 0) / 2)) return null
  const { symbol, toShown } = shownUnit(figure, units)
  const change = toShown(now) - toShown(before)
  return `${change > 0 ? '+' : ''}${withUnit(formatFigure(change, 2), symbol)}`
}

/** The reason of a verdict in the units of the page. */
export function reasonText({ result, scenario }: RunView, units: UnitSystem): string {
  if (!result) return ''
  return units === 'si' ? result.reason : reasonOf(scenario, result, wordingOf(units))
}

/** How sentences of the simulator write their quantities on the page. */
export function wordingOf(units: UnitSystem): Wording {
  if (units === 'si') return SI_WORDING
  const say = (quantity: Quantity) => {
    const { symbol, toShown } = quantityUnit(quantity, units)
    return (value: number) => withUnit(formatPlain(Number(toShown(value).toPrecision(3))), symbol)
  }
  return {
    force: say('force'),
    length: say('length'),
    temperature: say('temperature'),
    time: (s) => `${s.toFixed(3)} s`,
  }
}
