/** What of a search is drawn, picked and told. Knows no React. */
import {
  bestOf,
  editScenario,
  JOBS,
  type JobId,
  missWords,
  percent,
  type Scenario,
  studyWords,
  type TuneCandidate,
  type TuneFigure,
  type TuneObjective,
  tradeOff,
} from '../../../../sim/index.ts'
import { differences } from '../../../read/scenario/walk.ts'
import { shownUnit, type UnitSystem } from '../../../read/units.ts'
import { formatFigure, withUnit } from '../../../ui/format.ts'
import type { ShownUnit } from '../../../ui/unit.ts'

/** What a figure of the search is called on a job, and its unit. */
export function tuneFigure(
  job: JobId,
  key: TuneFigure | 'settled',
  units: UnitSystem,
): { label: string; unit: ShownUnit } {
  const { tune, figures } = JOBS[job]
  const { label, unit, shown } = figures.find(({ id }) => id === tune[key])!
  // "Taut" is a time by its unit alone.
  const name = key === 'time' && !/time/i.test(label) ? `${label} after` : label
  return { label: name, unit: shownUnit({ unit, ...(shown && { shown }) }, units) }
}

/** What the least of the margins to the edges of the verdict is called. */
export function spareLabel(job: JobId): string {
  const { tune, figures } = JOBS[job]
  const only = tune.spare.length === 1 ? figures.find(({ id }) => id === tune.spare[0]) : undefined
  return `Least ${only?.label.toLowerCase() ?? 'margin'}`
}

export const FIGURES: readonly TuneFigure[] = ['time', 'peak', 'ripple']

/** What may be asked for: a figure of the three runs, or the share of work done well that varies as the file says. */
export const goalsOf = (job: JobId): { value: TuneObjective; label: string }[] => [
  ...FIGURES.map((value) => ({ value, label: tuneFigure(job, value, 'si').label })),
  { value: 'share', label: `Parts ${studyWords(job).done}` },
]

/** A candidate that can be drawn. */
export type Placed = TuneCandidate & { time: number; peak: number }

export const isPlaced = (candidate: TuneCandidate | null): candidate is Placed =>
  candidate !== null && candidate.time !== null && candidate.peak !== null

/** The trade-off, and the best by the objective where it lies beside it; by time. */
export function choices(candidates: TuneCandidate[], objective: TuneObjective): Placed[] {
  const best = bestOf(candidates, objective)
  const all = new Set(tradeOff(candidates))
  if (best) all.add(best)
  return [...all].filter(isPlaced).sort((a, b) => a.time - b.time || b.peak - a.peak)
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

export function told(candidate: Placed, job: JobId, units: UnitSystem): string {
  const say = (key: TuneFigure) => {
    const { label, unit } = tuneFigure(job, key, units)
    return `${label.toLowerCase()} ${withUnit(formatFigure(unit.toShown(candidate[key] ?? Number.NaN)), unit.symbol)}`
  }
  const done = candidate.share === null ? '' : `, ${percent(candidate.share)} of the parts ${studyWords(job).done}`
  return `${say('time')}, ${say('peak')}${done}`
}

/** Whether two scenarios differ in more than the gains that a search changes. */
export function differInMore(a: Scenario, b: Scenario, { edits }: TuneCandidate): boolean {
  if (a === b) return false
  const [left, right] = [editScenario(a, edits), editScenario(b, edits)]
  return !left.ok || !right.ok || differences(left.scenario, right.scenario) > 0
}
