/**
 * A log as it was understood: what a drive's recorder, a test bench or a trace of the simulator wrote, in SI. All guesses stand in
 * here with their reasons, all rows that were left out with theirs.
 */
import type { Channel } from './channels.ts'
import type { LogFault, LogRemark, Reason, SkipReason } from './facts.ts'

/** One column as understood. */
export interface Column {
  /** As the file names it, without its unit; '' where it does not. */
  header: string
  /** Its place in the file, from 1: `#3` names it where the header does not. */
  place: number
  /** What it holds; null: not told, or another column holds the same. */
  channel: Channel | null
  reason: Reason
  /** As read; '' unknown. */
  unit: string
  /** SI unit of the values, '' where the scale is not known. */
  si: string
  /** SI value of one of it, negative where a sign was turned; null: not known, such as of counts, so that values are as read. */
  scale: number | null
  /** Added after that [SI]. */
  offset: number
  /** Of its values [SI]; NaN where it has none. */
  least: number
  most: number
  /** Smallest step between two rows [SI]; 0 where it never changes. */
  resolution: number
  /** Rows without a figure: empty, a word, infinite. */
  missing: number
  /** What the figures of a column of words stand for, in the order 0, 1, 2…; null: a column of figures. */
  words: string[] | null
  /** Header of its own time column where that is not the recording's: values are interpolated linearly onto the recording's time. */
  clock: string | null
}

/** One recording. Stamps rise strictly. */
export interface Recording {
  rows: number
  /** Its first and last line in the file, from 1. */
  line: number
  lastLine: number
  clock: Clock
  /** First and last stamp [s]. */
  from: number
  to: number
  /** Mean step of the rows, gaps left out [s]. */
  step: number
  /** Root mean square by which steps differ from that, gaps left out [s]. */
  jitter: number
  /** Steps longer than three times the median, and the longest step [s]. */
  gaps: number
  longest: number
  /** Rows that were left out since their stamp is that of the row before. */
  repeated: number
  /** All columns of the file but time that belong to this recording, mapped or not. */
  columns: Column[]
  /** [s] */
  time: Float64Array
  /** One for each of `columns`: SI where its scale is known, as read elsewhere; NaN where a field holds no figure. */
  values: Float64Array[]
}

/** How time was understood. */
export type Clock =
  | {
      kind: 'column'
      column: string
      /** From 1. */
      place: number
      unit: string
      scale: number
      by: 'header' | 'person' | 'preamble' | 'epoch' | 'step' | 'clock' | 'slope'
    }
  /** Rows that follow each other at this rate [Hz]; `text` is the line that says so. */
  | { kind: 'rate'; rate: number; by: 'person' | 'preamble' | 'slope'; text: string }

/** How the text is laid out. */
export interface Layout {
  encoding: string
  separator: ',' | ';' | '\t' | '|' | 'blanks' | 'pairs'
  decimal: '.' | ','
  /** Lines before names and numbers, at most 100. */
  preamble: string[]
  /** Lines of names and of units, from 1; 0: none. */
  namesLine: number
  unitsLine: number
  /** First line of numbers. */
  dataLine: number
  /** Every how manyth row was kept: 1 unless the log is enormous. */
  thinned: number
}

export interface Skipped {
  /** First and last line, from 1, of some that follow each other. */
  row: number
  lastRow: number
  why: SkipReason
}

export interface Log {
  /** Why it cannot be used, and no recordings then; none: it was read. */
  faults: LogFault[]
  recordings: Recording[]
  /** What stands out and what was assumed. */
  remarks: LogRemark[]
  skipped: Skipped[]
  /** Lines that were left out beyond those that are listed. */
  skippedMore: number
  /** Null where no table was found. */
  layout: Layout | null
  clock: Clock | null
  /** Every column of the file, time included, over all recordings: what a person chooses from. */
  columns: Column[]
}

/** What a person says about a column: it holds `channel`, null: nothing of use. */
export interface ColumnChoice {
  channel: Channel | 'time' | null
  /** Header as in the file, or `#3`. */
  header: string
  unit?: string
  /** On top of the unit's size; SI value of one where the unit has none, metres per turn where it is a rotary one. May be negative. */
  scale?: number
  /** [SI] */
  offset?: number
}

export interface Choices {
  /** The output of the axis turns: positions are angles [rad], efforts torques [N·m]. */
  turning?: boolean | undefined
  columns?: ColumnChoice[]
  /** Rows per second, whatever columns say [Hz]. */
  rate?: number
}

/** The column of a recording that holds a channel, and its values; null: none does. */
export function channelOf(recording: Recording, channel: Channel): { column: Column; values: Float64Array } | null {
  const place = recording.columns.findIndex((column) => column.channel === channel)
  const [column, values] = [recording.columns[place], recording.values[place]]
  return column && values ? { column, values } : null
}
