/** What a run hands out that has turned a closure on: verdict, figures, events. SI units. */
import type { Scenario } from '../../scenario/index.ts'
import { CAP_FIGURES, type CapFigureId } from '../../scenario/schema/cap/figures.ts'
import type { RunResult } from '../job.ts'
import type { Sums } from '../sums.ts'
import type { CapLoad } from './load.ts'

export const CAP_VERDICTS = ['tight', 'loose', 'forced', 'stripped', 'cross-threaded', 'missed', 'unstable'] as const
export type CapVerdict = (typeof CAP_VERDICTS)[number]

export const CAP_METRIC_IDS = Object.keys(CAP_FIGURES) as CapFigureId[]

/** A figure that does not exist is null, never 0. */
export type CapMetrics = Record<CapFigureId, number | null>

/** A closure as its run has left it. */
export interface CapEnd {
  scenario: Scenario
  load: CapLoad
  sums: Sums
  /** Of the current loop [s]. */
  period: number
}

/** Times of what happened [s], angles on the thread there [rad]; null: it did not. */
export interface CapEvents {
  /** The strategy halted its move or took over. */
  engaged: number | null
  /** The threads found each other, and the liner, or the jam of a misstart, was met. */
  start: number | null
  seat: number | null
  /** The torque reached its least, and went over its most. */
  reached: number | null
  reachedTurns: number | null
  over: number | null
  /** It jammed on a wrong turn, and its thread rode over. */
  jam: number | null
  strip: number | null
  stripTurns: number | null
  /** The end of the run, where the closure does not stand there. */
  moving: number | null
  /** The run left its rails; the traces end here. */
  unstable: number | null
}

export interface CapJudgement {
  verdict: CapVerdict
  metrics: CapMetrics
  events: CapEvents
}

export type CapResult = RunResult<CapJudgement>
