/** Logs in small. */
import { columnChoice } from '../../../sim/log/read/choice.ts'
import { type Choices, type Column, channelOf, type Log, type Recording } from '../../../sim/log/read/log.ts'
import { LogReader, type ReadOptions } from '../../../sim/log/read/reader.ts'
import { understand } from '../../../sim/log/read/understand.ts'

const bytesOf = (text: string | Uint8Array) => (typeof text === 'string' ? new TextEncoder().encode(text) : text)

export interface Asked extends Choices, ReadOptions {
  /** As on the command line. */
  column?: string[]
  /** Bytes that come at once. */
  piece?: number
}

export function read(text: string | Uint8Array, { column = [], piece, ...asked }: Asked = {}): Log {
  const reader = new LogReader(asked)
  const bytes = bytesOf(text)
  const size = piece ?? Math.max(1, bytes.length)
  for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size))
  const table = reader.finish()
  const columns = column.map((each) => {
    const choice = columnChoice(each, table)
    if (!choice) throw new Error(`${each} is no choice`)
    return choice
  })
  return understand(table, { ...asked, columns: [...(asked.columns ?? []), ...columns] })
}

/** The only recording of a log without faults. */
export function only(log: Log): Recording {
  if (log.faults.length > 0) throw new Error(JSON.stringify(log.faults))
  if (log.recordings.length !== 1) throw new Error(`${log.recordings.length} recordings`)
  return log.recordings[0]!
}

/** Values of a channel. */
export function valuesOf(recording: Recording, channel: NonNullable<Column['channel']>): number[] {
  const found = channelOf(recording, channel)
  if (!found) throw new Error(`no ${channel}`)
  return [...found.values]
}

export const columnOf = (recording: Recording, channel: NonNullable<Column['channel']>): Column =>
  channelOf(recording, channel)!.column

/** "channel header unit si scale" of each column, in short. */
export const brief = ({ columns }: Recording): string[] =>
  columns.map(({ channel, header, unit, scale }) => `${channel ?? '-'} ${header}|${unit}|${scale}`)

/** Rows of a slow move, made anew for each: time in ms, position in mm, current in mA. */
export const MOVE: readonly [number, number, number][] = [
  [0, 0, 120],
  [10, 0.25, 180.5],
  [20, 1, 260.25],
  [30, 2.25, 250],
  [40, 3.5, 190.75],
  [50, 4.25, -60],
]

/** The move as text: each row through `write`. */
export const moved = (write: (row: readonly [number, number, number]) => string, end = '\n'): string =>
  MOVE.map(write).join(end) + end
