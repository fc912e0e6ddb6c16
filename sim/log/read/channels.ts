/** What a column can hold: the channels of a trace, under their own names, and a few that only hardware has. */
import type { CAP_CHANNELS } from '../../job/cap/channels.ts'
import { JOBS } from '../../job/index.ts'
import type { PRESS_CHANNELS } from '../../job/press/channels.ts'
import type { WEB_CHANNELS } from '../../job/web/channels.ts'
import { channelsOf, type Channel as Traced } from '../../run/channels.ts'

type Own<Channels extends readonly { id: string }[]> = Channels[number]['id']
export type Channel =
  | Exclude<Traced, 'time'>
  | Own<typeof PRESS_CHANNELS>
  | Own<typeof CAP_CHANNELS>
  | Own<typeof WEB_CHANNELS>
  | Own<typeof OWN>

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

/** What the records of jobs whose output turns have under a name. */
const TURNING = new Map<string, string[]>()
for (const { id, unit } of Object.values(JOBS)
  .filter(({ output }) => output.travel === 'rad')
  .flatMap(channelsOf)) {
  const units = TURNING.get(id) ?? []
  if (!units.includes(unit)) TURNING.set(id, [...units, unit])
}

/** SI units of a channel; of an axis whose output turns, angles and torques. */
export const channelUnits = (channel: Channel | 'time', turning = false): readonly string[] =>
  (turning && !SAID[channel as Traced]?.units ? TURNING.get(channel) : undefined) ??
  LOG_CHANNELS.find(({ id }) => id === channel)?.units ??
  []
