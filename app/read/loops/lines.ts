/** How the working points are drawn and told: line styles, the worst case, what is marked. Knows no React. */
import {
  type JobId,
  type LoopAnalysis,
  type LoopId,
  type LoopsResult,
  studyWords,
  type WorkingPointId,
} from '../../../sim/index.ts'
import type { ChartSeries } from '../../ui/Chart.tsx'
import { formatFigure } from '../../ui/format.ts'
import type { ChartPoint, Sign } from '../../ui/LogChart.tsx'
import { frequencyText } from './frequency.ts'

export const LOOP_LABELS: Record<LoopId, string> = {
  current: 'Current',
  position: 'Position',
  velocity: 'Velocity',
  force: 'Force',
}

/** The loop of the effort by what the job wants: force, torque, tension. */
export function loopLabel(loop: LoopId, job: JobId): string {
  if (loop !== 'force') return LOOP_LABELS[loop]
  const { effort } = studyWords(job)
  return `${effort[0]!.toUpperCase()}${effort.slice(1)}`
}

/** Dash patterns [px]; the nominal work is the solid line, and what lies on the way or runs along has an own one. */
export const DASHES: Record<WorkingPointId, number[]> = {
  free: [2, 4],
  sliding: [5, 2],
  resting: [14, 3],
  softest: [9, 4],
  nominal: [],
  stiffest: [9, 3, 2, 3],
  relaxed: [9, 3, 2, 3, 2, 3],
  running: [5, 2],
}

const STROKES: Record<WorkingPointId, string> = {
  free: 'dotted',
  sliding: 'dashed closely',
  resting: 'long dashes',
  softest: 'dashed',
  nominal: 'solid',
  stiffest: 'dash-dotted',
  relaxed: 'dash-dotted with two dots',
  running: 'dashed closely',
}

/** Which line is which, as words beneath a drawing: "Dotted: free; solid: nominal". */
export function lineWords(analyses: readonly Pick<LoopAnalysis, 'workingPoint'>[]): string {
  const words = analyses.map(({ workingPoint: at }) => `${STROKES[at]}: ${SHORT[at].toLowerCase()}`).join('; ')
  return `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}`
}

/** Where curves lie on each other a sign of its own tells each. */
export const POINT_SIGNS: Record<WorkingPointId, Sign> = {
  free: 'circle',
  sliding: 'pentagon',
  resting: 'nabla',
  softest: 'triangle',
  nominal: 'square',
  stiffest: 'diamond',
  relaxed: 'pentagon',
  running: 'pentagon',
}

export const SHORT: Record<WorkingPointId, string> = {
  free: 'Free',
  sliding: 'Sliding',
  resting: 'Resting',
  softest: 'Softest',
  nominal: 'Nominal',
  stiffest: 'Stiffest',
  relaxed: 'Relaxed',
  running: 'Running',
}

export const pointLabel = ({ workingPoints }: LoopsResult, id: WorkingPointId) =>
  workingPoints.find((point) => point.id === id)?.label ?? id

export const analysesOf = (result: LoopsResult, loop: LoopId) => result.loops.filter((each) => each.loop === loop)

/** The loop that comes closest to −1: an unstable one before all, then the largest peak sensitivity. Null if none has a crossover. */
export function worstOf(analyses: LoopAnalysis[]): LoopAnalysis | null {
  const rank = ({ stable, margins }: LoopAnalysis) =>
    stable ? (margins?.peakSensitivity ?? 0) : Number.POSITIVE_INFINITY
  const closing = analyses.filter(({ crossover, stable }) => crossover !== null || !stable)
  return closing.reduce<LoopAnalysis | null>((worst, each) => (!worst || rank(each) > rank(worst) ? each : worst), null)
}

/** What a loop without margins is called, where room is short. */
export const standing = ({ stability }: LoopAnalysis) => (stability === 'border' ? 'on the border' : 'unstable')

export const nameOf = (analysis: LoopAnalysis, worst: LoopAnalysis | null) =>
  `${SHORT[analysis.workingPoint]}${analysis.stable ? '' : `, ${standing(analysis)}`}${analysis === worst ? ' · worst' : ''}`

export const WIDTH = 1.25
export const WORST_WIDTH = 2.75

export function curveSeries(
  analyses: LoopAnalysis[],
  worst: LoopAnalysis | null,
  column: 'magnitude' | 'phase',
): ChartSeries[] {
  return analyses.flatMap((analysis) =>
    analysis.curves
      ? [
          {
            label: nameOf(analysis, worst),
            color: 'var(--ink)',
            dash: DASHES[analysis.workingPoint],
            sign: POINT_SIGNS[analysis.workingPoint],
            width: analysis === worst ? WORST_WIDTH : WIDTH,
            time: analysis.curves.frequency,
            values: analysis.curves[column].map((value) => (Number.isFinite(value) ? value : SILENT)),
          },
        ]
      : [],
  )
}

/** Stands for −∞ dB. */
const SILENT = -300

/** The frequencies that every curve covers, in whole tenths of a decade. */
export function frequencyRange(analyses: LoopAnalysis[]): [number, number] {
  const columns = analyses.flatMap(({ curves }) => (curves ? [curves.frequency] : []))
  if (columns.length === 0) return [1, 1000]
  return [Math.min(...columns.map((column) => column[0]!)), Math.max(...columns.map((column) => column.at(-1)!))]
}

/** Crossover and gain margin, on the magnitude chart; words only at the worst case. */
export function magnitudePoints(analyses: LoopAnalysis[], worst: LoopAnalysis | null): ChartPoint[] {
  return analyses.flatMap((each) => {
    const told = each === worst
    const points: ChartPoint[] = []
    if (each.crossover !== null)
      points.push({ x: each.crossover, y: 0, label: told ? `crossover ${frequencyText(each.crossover)}` : '' })
    const { gainMargin = null, gainMarginFrequency = null } = each.margins ?? {}
    if (gainMargin !== null && gainMarginFrequency !== null)
      points.push({
        x: gainMarginFrequency,
        y: -gainMargin,
        label: told ? `gain margin ${formatFigure(gainMargin)} dB` : '',
      })
    return points
  })
}

/** Phase margin, on the phase chart: at the turn of the curve itself that it is counted from. */
export function phasePoints(analyses: LoopAnalysis[], worst: LoopAnalysis | null): ChartPoint[] {
  return analyses.flatMap((each) => {
    const { phaseMargin = null, phaseMarginFrequency = null, delayMargin = null } = each.margins ?? {}
    if (phaseMargin === null || phaseMarginFrequency === null || !each.curves) return []
    const near = each.curves.frequency.findIndex((frequency) => frequency >= phaseMarginFrequency)
    const turns = Math.round(((each.curves.phase[near] ?? -180) - (phaseMargin - 180)) / 360)
    return [
      {
        x: phaseMarginFrequency,
        y: phaseMargin - 180 + 360 * turns,
        label: each === worst ? marginLabel(phaseMargin, delayMargin) : '',
      },
    ]
  })
}

const marginLabel = (phaseMargin: number, delayMargin: number | null) =>
  `phase margin ${formatFigure(phaseMargin)}°${delayMargin === null ? '' : `, delay ${formatFigure(delayMargin * 1e3)} ms`}`

/** One sentence a working point. */
export function summary(result: LoopsResult, analyses: LoopAnalysis[], worst: LoopAnalysis | null): string {
  return analyses
    .map((each) => {
      const name = `${pointLabel(result, each.workingPoint)}${each === worst ? ', the worst case' : ''}`
      if (!each.stable) return `${name}: ${each.stability === 'border' ? 'on the border of stability' : 'unstable'}.`
      if (each.crossover === null) return `${name}: no crossover.`
      const { phaseMargin = null, gainMargin = null } = each.margins ?? {}
      const gain = gainMargin === null ? 'no bound on the gain' : `gain margin ${formatFigure(gainMargin)} dB`
      return `${name}: crossover ${frequencyText(each.crossover)}, phase margin ${formatFigure(phaseMargin)}°, ${gain}.`
    })
    .join(' ')
}

export interface WorstOfLoop {
  loop: LoopId
  /** Loop and working point in words. */
  heading: string
  /** Null where the loop has no crossover anywhere. */
  worst: LoopAnalysis | null
}

/** Each loop at the working point that comes closest to instability. */
export const worstOfEach = (result: LoopsResult): WorstOfLoop[] =>
  [...new Set(result.loops.map(({ loop }) => loop))].map((loop) => {
    const worst = worstOf(analysesOf(result, loop))
    const point = worst ? pointLabel(result, worst.workingPoint).toLowerCase() : 'no crossover'
    return { loop, heading: `${loopLabel(loop, result.friction.job)}, ${point}`, worst }
  })
