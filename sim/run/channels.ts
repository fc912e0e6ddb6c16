/** The columns of a record: time, what the job shows, what axis and drive show. */
import { GRIP_CHANNELS } from '../job/grip/channels.ts'
import { grip } from '../job/grip/index.ts'
import type { ChannelKind, Job } from '../job/job.ts'

const TIME = { id: 'time', label: 'time', unit: 's' } as const

/** In the order in which the bench shows them. */
const axisChannels = ({ label, travel, effort }: Job['output']) =>
  [
    { id: 'current', label: 'current', unit: 'A' },
    { id: 'command', label: 'current command', unit: 'A' },
    { id: 'voltage', label: 'voltage', unit: 'V' },
    { id: 'travel', label: `${label} travel`, unit: travel },
    { id: 'target', label: 'profile', unit: travel },
    { id: 'motorTravel', label: 'motor-side travel', unit: travel },
    { id: 'speed', label: `${label} speed`, unit: `${travel}/s` },
    { id: 'temperature', label: 'winding temperature', unit: '°C' },
    { id: 'gauge', label: 'gauge reading', unit: effort },
    { id: 'wantedSpeed', label: 'wanted speed', unit: `${travel}/s` },
  ] as const

/** One column a channel, all of the same length; a bucket of time gives two rows that keep its extremes. */
export const channelsOf = ({ channels, output }: Job): ChannelKind[] => [TIME, ...channels, ...axisChannels(output)]

/** Those of a grip. */
export const CHANNELS = [TIME, ...GRIP_CHANNELS, ...axisChannels(grip.output)] as const

export type Channel = (typeof CHANNELS)[number]['id']
export type Traces = Record<Channel, Float64Array>

/** Columns of a record by name, of a grip unless other channels are named. */
export const tracesOf = (columns: Float64Array[], channels: readonly ChannelKind[] = CHANNELS): Traces =>
  Object.fromEntries(channels.map(({ id }, c) => [id, columns[c] ?? new Float64Array(0)])) as Traces
