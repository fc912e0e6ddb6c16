/** Everything that page and log worker say to each other. The worker keeps the figures of the logs; the page gets what it shows. */
import type {
  Alignment,
  AnswerChannel,
  Choices,
  FitFault,
  FittedValue,
  FitWish,
  Identified,
  Log,
  Recording,
  ReplaySetup,
  ResidualOf,
  ResponseCurve,
  ResponseFit,
  ResponseInput,
  ResponseSaid,
  ResponseShown,
  ResponseUnits,
  Scenario,
  Spectrum,
  Taken,
} from '../../sim/index.ts'

/** A log without its figures. */
export interface LogTold extends Omit<Log, 'recordings'> {
  recordings: Omit<Recording, 'time' | 'values'>[]
  /** It is no log but a frequency response, as somebody has measured it. */
  response: ResponseTable | null
}

/** A table of a frequency response: its rows, first and last frequency [rad/s], and how it was understood. */
export interface ResponseTable {
  rows: number
  from: number
  to: number
  units: ResponseUnits
  coherence: boolean
}

/** A recording of a log that is open. */
export interface RecordingOf {
  log: number
  recording: number
}

export interface FitQuestion {
  scenario: Scenario
  recordings: RecordingOf[]
  wish: FitWish
}

/** A response is asked for: that of a table, or one computed from a recording. */
export interface ResponseQuestion {
  scenario: Scenario
  log: number
  recording: number | null
  shown: ResponseShown
  said: ResponseSaid
}

/** A measured response over that of the axis as it stands, and as fitted to it. */
export interface RespondedTold {
  measured: ResponseCurve
  /** Null: nobody knows it. */
  coherence: Float64Array | null
  /** Separate blocks that were averaged, 0 where nobody knows it. */
  blocks: number
  /** What drives the axis. */
  input: ResponseInput
  /** By row of it: 1 where it counts. */
  counts: Uint8Array
  before: ResponseCurve
  after: ResponseCurve | null
  fit: ResponseFit | null
  /** Why there is no fit. */
  why: Unfit | null
}

/** Page → worker. `log` names a log that was opened, `turn` counts questions up: only the last is listened to. */
export type LogRequest =
  | { kind: 'read'; log: number; file: Blob }
  | { kind: 'close'; log: number }
  | { kind: 'understand'; log: number; choices: Choices }
  | { kind: 'lay'; turn: number; question: FitQuestion }
  | { kind: 'fit'; turn: number; question: FitQuestion }
  | { kind: 'respond'; turn: number; question: ResponseQuestion }
  | { kind: 'stop' }

/** What was measured over what is simulated, at instants of which so many are kept that no extreme is lost. */
export interface Overlay {
  channel: AnswerChannel
  /** From the first row on [s]. */
  time: Float64Array
  measured: Float64Array
  /** With the values of the scenario, and with those of the fit. */
  before: Float64Array
  after: Float64Array | null
  /** Of measured less simulated; null: too few rows. */
  spectra: { before: Spectrum | null; after: Spectrum | null }
}

/** One recording over the model. */
export interface LaidRecording {
  setup: ReplaySetup
  /** Mean step of its rows [s]. */
  step: number
  overlays: Overlay[]
}

export interface Laid {
  recordings: LaidRecording[]
  residuals: ResidualOf[]
  alignment: Alignment[]
  taken: Taken[]
}

export interface FitTold extends Laid {
  values: FittedValue[]
  untold: Identified['untold']
  scenario: Scenario
  runs: number
  settled: boolean
}

/** Why nothing could be laid over the model or fitted: a fact with its sentence, or words of a rule. */
export type Unfit = { fault: FitFault } | { message: string }

/** Worker → page. */
export type LogAnswer =
  | { kind: 'progress'; log: number; done: number }
  /** `sketches`: of each column of the file, by its place; only when it has just been read. */
  | { kind: 'understood'; log: number; told: LogTold; sketches: Float64Array[] | null }
  | { kind: 'unreadable'; log: number }
  | { kind: 'laid'; turn: number; laid: Laid }
  | { kind: 'fitting'; turn: number; done: number }
  | { kind: 'fitted'; turn: number; fit: FitTold }
  | { kind: 'responded'; turn: number; responded: RespondedTold }
  | { kind: 'unfit'; turn: number; why: Unfit }
  | { kind: 'stopped'; turn: number }
