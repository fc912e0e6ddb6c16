/** What a column can hold: the channels of a trace, under their own names, and a few that only hardware has. */
import { JOBS } from '../../job/index.ts'
import { channelsOf, type Channel as Traced } from '../../run/channels.ts'

export type Channel = Exclude<Traced, 'time'> | (typeof OWN)[number]['id']

export interface ChannelOfLog {
  id: Channel | 'time'
  label: string
  /** SI units that it may have; none: a bare figure. What a drive is told to do (`command`) may be any of these, or unknown. */
  units: readonly string[]
}

const OWN = [
  { id: 'torque', label: 'torque', units: ['N·m'] },
  { id: 'flag', label: 'flag', units: [] },
  { id: 'recording', label: 'number of the recording', units: [] },
] as const

/** Where a log may say more than a trace, and plainer words. */
const SAID: Partial<Record<Traced, { label: string; units?: readonly string[] }>> = {
  target: { label: 'position reference' },
  travel: { label: 'position' },
  motorTravel: { label: 'position at the motor' },
  speed: { label: 'speed' },
  wantedSpeed: { label: 'speed reference' },
  command: { label: 'command', units: ['A', 'V', 'N', 'N·m'] },
  gauge: { label: 'force' },
  force: { label: 'force at the contact' },
}

const traced = Object.values(JOBS).flatMap(channelsOf)

/** Column names of a trace file, in lower case, with their channels. */
export const TRACE_LABELS = new Map(traced.map(({ id, label }) => [label.toLowerCase(), id as Channel | 'time']))

export const LOG_CHANNELS: readonly ChannelOfLog[] = [
  ...traced.map(({ id, label, unit }) => {
    const said = SAID[id as Traced]
    return { id: id as Channel | 'time', label: said?.label ?? label, units: said?.units ?? [unit] }
  }),
  ...OWN,
]

/** Plainer names for channels, as a person writes them in a line; the measured force is that of the gauge. */
const PLAIN: Partial<Record<Channel, string>> = {
  travel: 'position',
  target: 'reference',
  wantedSpeed: 'speed-reference',
  motorTravel: 'motor-position',
  gauge: 'force',
  force: 'contact-force',
}

/** How a person names it. */
export const channelName = (id: Channel | 'time'): string => (id === 'time' ? id : (PLAIN[id] ?? id))

/** What `channelNamed` knows. */
export const channelNames = (): string[] => LOG_CHANNELS.map(({ id }) => channelName(id))

/** The channel that a person means, by its plain name or the one that it has in a trace; null: there is none of that name. */
export const channelNamed = (name: string): Channel | 'time' | null =>
  LOG_CHANNELS.find(({ id }) => channelName(id) === name)?.id ?? LOG_CHANNELS.find(({ id }) => id === name)?.id ?? null

export const channelLabel = (channel: Channel | 'time'): string =>
  LOG_CHANNELS.find(({ id }) => id === channel)?.label ?? channel

export const channelUnits = (channel: Channel | 'time'): readonly string[] =>
  LOG_CHANNELS.find(({ id }) => id === channel)?.units ?? []
