/** The columns of a record: time, what the job shows, what axis and drive show. */
import { GRIP_CHANNELS } from '../job/grip/channels.ts'

const TIME = { id: 'time', label: 'time', unit: 's' } as const

/** In the order in which the bench shows them. */
const AXIS_CHANNELS = [
  { id: 'current', label: 'current', unit: 'A' },
  { id: 'command', label: 'current command', unit: 'A' },
  { id: 'voltage', label: 'voltage', unit: 'V' },
  { id: 'travel', label: 'jaw travel', unit: 'm' },
  { id: 'target', label: 'profile', unit: 'm' },
  { id: 'motorTravel', label: 'motor-side travel', unit: 'm' },
  { id: 'speed', label: 'jaw speed', unit: 'm/s' },
  { id: 'temperature', label: 'winding temperature', unit: '°C' },
  { id: 'gauge', label: 'gauge reading', unit: 'N' },
  { id: 'wantedSpeed', label: 'wanted speed', unit: 'm/s' },
] as const

/** One column a channel, all of the same length; a bucket of time gives two rows that keep its extremes. */
export const CHANNELS = [TIME, ...GRIP_CHANNELS, ...AXIS_CHANNELS] as const

export type Channel = (typeof CHANNELS)[number]['id']
export type Traces = Record<Channel, Float64Array>

/** Columns of a record of a grip, by name. */
export const tracesOf = (columns: Float64Array[]): Traces =>
  Object.fromEntries(CHANNELS.map(({ id }, c) => [id, columns[c] ?? new Float64Array(0)])) as Traces
