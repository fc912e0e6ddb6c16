/**
 * What a job says of itself outside the compiled core: how it is filled from a scenario, what its work asks of a strategy, and what
 * became of it. The cycle, the axis and the drive know none of it.
 */
import type { Output } from '../axis/fill.ts'
import type { Load } from '../axis/load.ts'
import type { Scenario } from '../scenario/index.ts'
import type { LoadId } from './loads.ts'
import type { Sums } from './sums.ts'

/** A column of the record: SI unit of its values. */
export interface ChannelKind {
  id: string
  label: string
  unit: string
}

/** How a run left its rails; '' if it did not. */
export type Cause = '' | 'numbers' | 'travel' | 'position loop' | 'current loop'

/** A run as it has ended. */
export interface RunEnd {
  load: Load
  sums: Sums
  /** Period of the current loop and integration step [s]. */
  period: number
  step: number
  /** When the strategy had halted its move or taken over [s]; NaN: it had not. */
  engaged: number
  /** When the run left its rails [s], and how; NaN: it did not. */
  left: number
  cause: Cause
  /** Fingerprint of the record, '' if there is none. */
  hash: string
}

/** What a job asks of a strategy; lengths and forces in the units of the job's output. */
export interface Work {
  /** Force of the output for each newton of effort, as the effort is wanted and measured. */
  perEffort: number
  /** Travel to first touch of the nominal work, and where the approach has to end at the latest [m]. */
  touch: number
  stroke: number
  /** Travel from which on the creep speed holds, and from which on a clamp limits [m]; Infinity: nowhere. */
  creepFrom: number
  clampFrom: number
  /** Farthest that the output may get before a run has left its rails [m]. */
  reach: number
}

export interface JobResult {
  verdict: string
  metrics: object
  events: object
}

export interface Job<Result extends JobResult = JobResult> {
  id: string
  label: string
  /** Its half in the compiled core. */
  load: LoadId
  /** What the output's coordinate and effort are. */
  output: { travel: 'm' | 'rad'; effort: 'N' | 'N·m' }
  /** Columns of its record behind time and before those of the axis, in the order in which the load shows them. */
  channels: readonly ChannelKind[]
  outputOf(scenario: Scenario): Output
  workOf(scenario: Scenario): Work
  fill(load: Load, scenario: Scenario): void
  judge(scenario: Scenario, end: RunEnd): Result
}
