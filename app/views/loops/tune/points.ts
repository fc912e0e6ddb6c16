/** What of a search is drawn, picked and told. Knows no React. */
import {
  bestOf,
  editScenario,
  missWords,
  percent,
  type Scenario,
  type TuneCandidate,
  type TuneFigure,
  type TuneObjective,
  tradeOff,
} from '../../../../sim/index.ts'
import { differences } from '../../../read/scenario/walk.ts'
import { type Quantity, quantityUnit, type UnitSystem } from '../../../read/units.ts'
import { formatFigure, withUnit } from '../../../ui/format.ts'

export const OBJECTIVES: Record<TuneFigure, { label: string; quantity: Quantity }> = {
  gripTime: { label: 'Grip time', quantity: 'shortTime' },
  peakForce: { label: 'Peak force', quantity: 'force' },
  forceRipple: { label: 'Force ripple', quantity: 'force' },
}

/** What may be asked for: a figure of the three parts, or the share of those held that vary as the file says. */
export const GOALS: { value: TuneObjective; label: string }[] = [
  ...Object.entries(OBJECTIVES).map(([value, { label }]) => ({ value: value as TuneFigure, label })),
  { value: 'share', label: 'Parts held' },
]

/** A candidate that can be drawn. */
export type Placed = TuneCandidate & { gripTime: number; peakForce: number }

export const isPlaced = (candidate: TuneCandidate | null): candidate is Placed =>
  candidate !== null && candidate.gripTime !== null && candidate.peakForce !== null

/** The trade-off, and the best by the objective where it lies beside it; by grip time. */
export function choices(candidates: TuneCandidate[], objective: TuneObjective): Placed[] {
  const best = bestOf(candidates, objective)
  const all = new Set(tradeOff(candidates))
  if (best) all.add(best)
  return [...all].filter(isPlaced).sort((a, b) => a.gripTime - b.gripTime || b.peakForce - a.peakForce)
}

/** What the candidates that are not sound miss, the most frequent first: `phase margin 9, softest part crushed 4`. */
export function misses(candidates: TuneCandidate[]): { miss: string; count: number }[] {
  const counts = new Map<string, number>()
  for (const { miss } of candidates) {
    if (!miss) continue
    const words = missWords(miss)
    counts.set(words, (counts.get(words) ?? 0) + 1)
  }
  return [...counts].map(([miss, count]) => ({ miss, count })).sort((a, b) => b.count - a.count)
}

/** How near the search came to a margin that candidates miss; '' where that says nothing. */
export function nearest(candidates: TuneCandidate[], miss: string): string {
  const figures = (key: 'phaseMargin' | 'peakSensitivity') =>
    candidates.filter((each) => each.miss?.kind === miss).map((each) => each[key] ?? Number.NaN)
  if (miss === 'phase margin') return `The largest of those is ${formatFigure(Math.max(...figures('phaseMargin')))}°.`
  if (miss === 'peak sensitivity')
    return `The smallest of those is ${formatFigure(Math.min(...figures('peakSensitivity')))}.`
  return ''
}

export function told(candidate: Placed, units: UnitSystem): string {
  const say = (key: TuneFigure) => {
    const { symbol, toShown } = quantityUnit(OBJECTIVES[key].quantity, units)
    const value = candidate[key]
    return withUnit(formatFigure(value === null ? null : toShown(value)), symbol)
  }
  const held = candidate.share === null ? '' : `, ${percent(candidate.share)} of the parts held`
  return `grip time ${say('gripTime')}, peak force ${say('peakForce')}${held}`
}

/** Whether two scenarios differ in more than the gains that a search changes. */
export function differInMore(a: Scenario, b: Scenario, { edits }: TuneCandidate): boolean {
  if (a === b) return false
  const [left, right] = [editScenario(a, edits), editScenario(b, edits)]
  return !left.ok || !right.ok || differences(left.scenario, right.scenario) > 0
}
