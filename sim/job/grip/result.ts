/** What a run hands out: verdict, figures, events and traces. SI units. */
import type { Scenario } from '../../scenario/index.ts'
import { FIGURES, type FigureId } from '../../scenario/schema/figures.ts'
import type { RunResult } from '../job.ts'
import type { Sums } from '../sums.ts'
import type { GripLoad } from './load.ts'

export const VERDICTS = ['held', 'slipped', 'loose', 'dropped', 'marked', 'crushed', 'missed', 'unstable'] as const
export type Verdict = (typeof VERDICTS)[number]

/** Headline figures of one grip, in the order of tables; `metrics.ts` says what each is. */
export const METRIC_IDS = Object.keys(FIGURES) as FigureId[]

export type MetricId = FigureId

/** A figure that does not exist is null, never 0. */
export type Metrics = Record<MetricId, number | null>

/** A grip as its run has left it. */
export interface GripEnd {
  scenario: Scenario
  load: GripLoad
  sums: Sums
  /** Of the current loop [s]. */
  period: number
}

/** Times of what happened [s]; null: it did not. */
export interface GripEvents {
  lift: number | null
  /** The strategy halted its move or took over: threshold stop confirmed, clamp saturated, gauge felt contact. */
  engaged: number | null
  crack: number | null
  /** The jaws met through the part. */
  met: number | null
  /** A force first exceeded the part's limit for marks or dents. */
  mark: number | null
  /** First sliding, and the part out of the jaws. */
  slip: number | null
  drop: number | null
  /** The part hung and a contact was open. */
  loose: number | null
  /** The part is free again after the jaws have opened on purpose. */
  release: number | null
  /** The run left its rails; the traces end here. */
  unstable: number | null
}

export interface GripJudgement {
  verdict: Verdict
  metrics: Metrics
  events: GripEvents
}

export type GripResult = RunResult<GripJudgement>
