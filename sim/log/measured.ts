/** A log as the model is held against it: one recording, in SI and in the model's own frame, under the names of a trace. */
import { filled } from './grid.ts'

/**
 * What a log may have of an axis: the way that was wanted, and what the model shows too. `motorTravel` is what the encoder reads,
 * `travel` is where the output is, where a log has both.
 */
export type MeasuredChannel =
  | 'target'
  | 'motorTravel'
  | 'travel'
  | 'speed'
  | 'command'
  | 'current'
  | 'voltage'
  | 'force'

/** All but the way that was wanted. */
export type AnswerChannel = Exclude<MeasuredChannel, 'target'>

export interface Measured {
  /** [s], rising. */
  time: Float64Array
  /** A value a row [m, m/s, A, V, N]; NaN where the log has none. */
  channels: Partial<Record<MeasuredChannel, Float64Array>>
  /** A trace of the simulator, in which what was wanted is held from the last sample of the servo on. */
  trace?: boolean
}

/** A column without gaps, for what needs a value in every row; null: the log has none. */
export const wholeColumn = ({ time, channels }: Measured, channel: MeasuredChannel): Float64Array | null => {
  const column = channels[channel]
  return column && !column.every(Number.isNaN) ? filled(time, column) : null
}

/** SI unit of each, of the output of a job. */
export const unitsOf = ({
  travel,
  effort,
}: {
  travel: 'm' | 'rad'
  effort: string
}): Record<MeasuredChannel, string> => ({
  target: travel,
  motorTravel: travel,
  travel,
  speed: `${travel}/s`,
  command: 'A',
  current: 'A',
  voltage: 'V',
  force: effort,
})
