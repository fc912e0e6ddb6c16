/** What is said of a log, as facts; `sim/say/log.ts` has the sentences. */
import type { Channel } from './channels.ts'

/** Why a column was taken for what it is. */
export type Reason =
  | { kind: 'person' }
  | { kind: 'trace' }
  /** Times of the day. */
  | { kind: 'stamps' }
  /** Its name (and the unit fits); `unfit`: the unit measures something else, so that the scale is not known. */
  | { kind: 'name'; word: string; unfit: boolean }
  | { kind: 'unit' }
  /** Without a quantity in its name, it lies where this other column lies. */
  | { kind: 'follows'; column: string }
  | { kind: 'other'; channel: Channel | 'time'; column: string }
  | { kind: 'empty' }
  | { kind: 'text' }
  /** Figure by figure another column, which is in counts. */
  | { kind: 'counts'; column: string }
  /** The word says that it is something that no channel holds, such as a difference. */
  | { kind: 'not'; word: string }
  /** Named a time, it does not rise. */
  | { kind: 'no-clock' }
  /** A time, but a rate was given. */
  | { kind: 'rate' }
  /** Another clock of the same rows. */
  | { kind: 'second-clock'; column: string }
  | { kind: 'unknown' }

/** Why a line was left out. */
export type SkipReason =
  | { kind: 'text'; text: string }
  | { kind: 'comment'; text: string }
  | { kind: 'end'; text: string }
  | { kind: 'header' }
  | { kind: 'note'; column: string; text: string }
  | { kind: 'fields'; given: number; wanted: number }
  | { kind: 'cut' }
  | { kind: 'no-time' }
  | { kind: 'repeated' }
  | { kind: 'standing' }
  | { kind: 'short'; rows: number }

/** Why a log cannot be used. */
export type LogFault =
  | { kind: 'empty' }
  | { kind: 'not-text'; is: string }
  | { kind: 'long-line' }
  | { kind: 'no-numbers' }
  | { kind: 'no-rows' }
  | { kind: 'no-time'; columns: string[]; period: string }
  | { kind: 'time-unit'; column: string; step: number }
  | { kind: 'backwards'; line: number; from: number; to: number }
  | { kind: 'no-column'; header: string; columns: string[] }
  | { kind: 'two-columns'; header: string; places: number[] }
  | { kind: 'two-for-one'; channel: Channel | 'time'; headers: string[] }
  | { kind: 'asked-twice'; header: string }
  | { kind: 'constant'; channel: Channel | 'time'; header: string; value: number }
  | { kind: 'wordy'; channel: Channel | 'time'; header: string }
  | { kind: 'valueless'; channel: Channel | 'time'; header: string }
  | { kind: 'unit'; unit: string; header: string }

/** What stands out. */
export type LogRemark =
  | { kind: 'time-assumed'; column: string; step: number }
  | { kind: 'time-contradicted'; said: string; factor: number; taken: boolean }
  | { kind: 'misnamed'; names: number; columns: number }
  | { kind: 'thinned'; every: number }
  | { kind: 'repeated'; rows: number; of: number }
  | { kind: 'limit-of-bits'; column: string; value: number; rows: number }
  /** What a drive gives sits at its extreme in so many of the rows. */
  | { kind: 'at-limit'; column: string; channel: Channel; value: number; share: number }
  /** The position moves so many times the way that the speed makes. */
  | { kind: 'unlike'; speed: string; position: string; ratio: number }
  | { kind: 'lags'; speed: string; position: string; lag: number }
  | { kind: 'coarse'; column: string; steps: number }
  | { kind: 'same'; column: string; other: string }
  | { kind: 'unknown-scale'; column: string; unit: string; channel: Channel }
  | { kind: 'still' }
  | { kind: 'interpolated'; columns: string[]; clock: string }
  | { kind: 'constant'; column: string; channel: Channel }
