/** What is asked of a fit and what it says, as facts; `sim/say/fit.ts` has the sentences. */
import type { Astray } from './astray.ts'
import type { AnswerChannel } from './measured.ts'
import type { Driver } from './replay.ts'

export interface FitWish {
  /** Keys that are free; null: what the logs can tell. */
  free: string[] | null
  /** The work is met, as a part between the jaws; null: where a force rises. */
  part?: boolean | null
  /** What drives the model; null: the way that was wanted where the log has it. */
  drivenBy?: Driver | null
  /** Travel of the output where the log's position reads 0 [m]. */
  origin?: number
}

export interface FittedValue {
  path: string
  from: number | null
  value: number
  /** 95 % interval; null: the log does not tell that end. */
  low: number | null
  high: number | null
}

export interface ResidualOf {
  log: number
  channel: AnswerChannel
  /** Root mean square of measured less simulated [SI], and the same before the fit. */
  rms: number
  before: number
  /** Norm of what is left over the norm of what was measured; null where that is 0. */
  relative: number | null
}

/** What a log does not tell. */
export type Untold =
  /** Its interval is wider than half of it. */
  | { kind: 'hardly'; paths: [string] }
  /** The answer does not change with it. */
  | { kind: 'nothing'; paths: [string] }
  /** It ended at an end of its range. */
  | { kind: 'end'; paths: [string]; bound: number }
  | { kind: 'together'; paths: [string, string]; correlation: number }
  /** Forces are known as currents only: all of these as their ratio to the force constant. */
  | { kind: 'ratio'; paths: string[]; constant: string }

/** Where a log begins to tell, and how it lies over the model. */
export interface Alignment {
  log: number
  /** Where the axis does not follow its reference; these rows are left out of fit and residuals. */
  astray: Astray[]
  /** First motion and first touch, from the first row on [s]; null: none. */
  motion: number | null
  touch: number | null
  /** By how much a channel shows later what the fitted model shows [s], by correlation; null: they do not correlate. */
  late: { channel: AnswerChannel; delay: number | null }[]
}

/** Why there is no fit. */
export type FitFault =
  | { kind: 'still' }
  /** A position in units of length, of an axis whose output turns. */
  | { kind: 'ways'; header: string }
  /** Positions as angles alone, of an axis whose output goes straight. */
  | { kind: 'angles'; header: string }
  | { kind: 'nothing-drives'; log: number }
  | { kind: 'nothing-compares'; log: number }
  | { kind: 'no-quantity'; path: string }
  | { kind: 'nothing-free' }
  | { kind: 'another-axis'; channel: AnswerChannel; share: number }
  /** Of a frequency response: so many of its frequencies count, and so many quantities are free. */
  | { kind: 'few-frequencies'; used: number; leftOut: number; free: number }
  | { kind: 'another-response' }
  /** A log that gives no frequency response: so many rows, and how many it takes. */
  | { kind: 'short-response'; rows: number; least: number }
  | { kind: 'no-response'; shown: 'speed' | 'position' }

export class NoFit extends Error {
  readonly fault: FitFault
  constructor(fault: FitFault) {
    super(fault.kind)
    this.fault = fault
  }
}
