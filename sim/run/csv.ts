/** Traces as text: RFC 4180, one header row with units. */
import Papa from 'papaparse'
import type { ChannelKind } from '../job/job.ts'
import { CHANNELS, type Channel, type Traces } from './channels.ts'

/** One run; a column a channel, of a grip unless others are named, SI units. */
export function tracesCsv(traces: Traces, channels: readonly ChannelKind[] = CHANNELS): string {
  const fields = channels.map(({ label, unit }) => `${label} [${unit}]`)
  const columns = channels.map(({ id }) => traces[id as Channel])
  const data = Array.from(traces.time, (_, row) => columns.map((column) => column[row]))
  return `${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`
}
