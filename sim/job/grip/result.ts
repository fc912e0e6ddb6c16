/** What a run hands out: verdict, figures, events and traces. SI units. */
import type { Scenario, StrategyId } from '../../scenario/index.ts'
import { FIGURES, type FigureId } from '../../scenario/schema/figures.ts'
import type { Cause } from '../job.ts'
import type { Overload } from '../ratings.ts'
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
  /** The part hung and neither contact held it, or now one and now the other. */
  loose: number | null
  /** The part is free again after the jaws have opened on purpose. */
  release: number | null
  /** The run left its rails; the traces end here. */
  unstable: number | null
}

/** One bound that the scenario sets to a figure, and what became of it. */
export interface Requirement {
  figure: MetricId
  bound: 'least' | 'most'
  /** [SI] */
  limit: number
  /** Of the run [SI]; infinite where nothing limits it, null where there is none. */
  value: number | null
  met: boolean
}

/** Why a verdict cannot be relied on: its integration step. */
export interface Doubt {
  ground: 'verdict' | 'margin' | 'error'
  /** Step of the run that it was held against [s], and the verdict there. */
  step: number
  verdict: Verdict
  /** The step error of the run; null: there is none. */
  error: number | null
}

export interface GripResult {
  strategy: StrategyId
  verdict: Verdict
  /** Ratings of motor and drive that the run exceeds; beside the verdict. */
  overloads: Overload[]
  /** What is asked of the figures; beside the verdict too. */
  requirements: Requirement[]
  /** Largest of the errors by the step, each as a share (`run/step-error.ts`); null: there is none, or it was not computed. */
  stepError: number | null
  /** Of each figure that has one [its unit]; null: the run was not held against a finer one. */
  stepErrors: Partial<Record<MetricId, number>> | null
  /** Null: none, or not asked for. */
  doubt: Doubt | null
  metrics: Metrics
  events: GripEvents
  /** Fingerprint of the traces; equal only where two runs agree to the last bit. */
  hash: string
  /** What went wrong in an unstable run, '' else. */
  cause: Cause
  /** Integration step [s]. */
  step: number
}
