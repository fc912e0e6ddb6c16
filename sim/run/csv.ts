/** Traces as text: RFC 4180, one header row with units. */
import Papa from 'papaparse'
import { CHANNELS, type Traces } from './channels.ts'

/** One run; columns in the order of CHANNELS, SI units. */
export function tracesCsv(traces: Traces): string {
  const fields = CHANNELS.map(({ label, unit }) => `${label} [${unit}]`)
  const columns = CHANNELS.map(({ id }) => traces[id])
  const data = Array.from(traces.time, (_, row) => columns.map((column) => column[row]))
  return `${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`
}
