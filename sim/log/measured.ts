/** A log as the model is held against it: one recording, in SI and in the model's own frame. */

/** What a log may have of an axis: the way that was wanted, and what the model shows too. */
export const MEASURED = ['target', 'position', 'speed', 'command', 'current', 'voltage', 'force'] as const
export type MeasuredChannel = (typeof MEASURED)[number]

/** All but the way that was wanted. */
export type AnswerChannel = Exclude<MeasuredChannel, 'target'>

export interface Measured {
  /** [s], rising. */
  time: Float64Array
  /** A value a row [m, m/s, A, V, N]; NaN where the log has none. */
  channels: Partial<Record<MeasuredChannel, Float64Array>>
}

/** SI unit of each. */
export const UNITS: Record<MeasuredChannel, string> = {
  target: 'm',
  position: 'm',
  speed: 'm/s',
  command: 'A',
  current: 'A',
  voltage: 'V',
  force: 'N',
}
