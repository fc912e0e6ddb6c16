/** The charts that can be shown: one a channel. */
import { CHANNELS, type Channel } from '../../../sim/index.ts'
import type { Quantity } from '../units.ts'

export interface Panel {
  channel: Channel
  label: string
  quantity: Quantity
}

const QUANTITY: Record<string, Quantity> = {
  N: 'force',
  A: 'current',
  V: 'voltage',
  m: 'length',
  'm/s': 'speed',
  '°C': 'temperature',
}

const capital = (text: string) => text[0]!.toUpperCase() + text.slice(1)

export const PANELS: Panel[] = CHANNELS.filter(({ id }) => id !== 'time').map(({ id, label, unit }) => ({
  channel: id,
  label: id === 'force' ? 'Grip force' : capital(label),
  quantity: QUANTITY[unit] ?? 'number',
}))
