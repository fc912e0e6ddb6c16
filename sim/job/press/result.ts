/** What a run hands out that has pressed a bushing in: verdict, figures, events. SI units. */
import type { Scenario } from '../../scenario/index.ts'
import { PRESS_FIGURES, type PressFigureId } from '../../scenario/schema/press/figures.ts'
import type { RunResult } from '../job.ts'
import type { Sums } from '../sums.ts'
import type { PressLoad } from './load.ts'

export const PRESS_VERDICTS = ['seated', 'short', 'slack', 'tilted', 'forced', 'missed', 'unstable'] as const
export type PressVerdict = (typeof PRESS_VERDICTS)[number]

export const PRESS_METRIC_IDS = Object.keys(PRESS_FIGURES) as PressFigureId[]

/** A figure that does not exist is null, never 0. */
export type PressMetrics = Record<PressFigureId, number | null>

/** A press as its run has left it. */
export interface PressEnd {
  scenario: Scenario
  load: PressLoad
  sums: Sums
  /** Of the current loop [s]. */
  period: number
}

/** Times of what happened [s], depths of it [m]; null: it did not. */
export interface PressEvents {
  /** The strategy halted its move or took over. */
  engaged: number | null
  /** The bushing met the shoulder. */
  seat: number | null
  /** The force first exceeded its limit, lay below the band, above it, and above it though not by tilt alone. */
  over: number | null
  overDepth: number | null
  below: number | null
  belowDepth: number | null
  above: number | null
  aboveDepth: number | null
  jammedDepth: number | null
  /** Where the force came nearest to the band, or left it furthest [m]. */
  closestDepth: number | null
  /** The end of the run, where no shoulder stops the bushing and it does not stand there. */
  moving: number | null
  /** The run left its rails; the traces end here. */
  unstable: number | null
}

export interface PressJudgement {
  verdict: PressVerdict
  metrics: PressMetrics
  events: PressEvents
}

export type PressResult = RunResult<PressJudgement>
