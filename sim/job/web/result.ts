/** What a run hands out that has pulled a web: verdict, figures, events. SI units. */
import type { Scenario } from '../../scenario/index.ts'
import { WEB_FIGURES, type WebFigureId } from '../../scenario/schema/web/figures.ts'
import type { RunResult } from '../job.ts'
import type { Sums } from '../sums.ts'
import type { WebLoad } from './load.ts'

export const WEB_VERDICTS = ['taut', 'slack', 'stretched', 'torn', 'unstable'] as const
export type WebVerdict = (typeof WEB_VERDICTS)[number]

export const WEB_METRIC_IDS = Object.keys(WEB_FIGURES) as WebFigureId[]

/** A figure that does not exist is null, never 0. */
export type WebMetrics = Record<WebFigureId, number | null>

/** A web as its run has left it. */
export interface WebEnd {
  scenario: Scenario
  load: WebLoad
  sums: Sums
  /** Of the current loop [s]. */
  period: number
}

/** Times of what happened [s]; null: it did not. */
export interface WebEvents {
  /** The position loop came to its limit, or the gauge roll took over. */
  engaged: number | null
  /** The tension first exceeded the most, and first lay below the least in the time that counts. */
  over: number | null
  under: number | null
  /** The web tore, and the tension that tore it [N]. */
  torn: number | null
  tearingTension: number | null
  /** The run left its rails; the traces end here. */
  unstable: number | null
}

export interface WebJudgement {
  verdict: WebVerdict
  metrics: WebMetrics
  events: WebEvents
}

export type WebResult = RunResult<WebJudgement>
