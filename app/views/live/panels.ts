/** The traces that roll. */
import type { Channel } from '../../../sim/index.ts'
import type { Quantity } from '../../read/units.ts'

export interface Panel {
  label: string
  quantity: Quantity
  height: number
  /** The channel that matters, and a thin one behind it. That has no name at its end, where the two would keep changing places. */
  channel: Channel
  behind: Channel
}

export const PANELS: Panel[] = [
  { label: 'Grip force', quantity: 'force', height: 150, channel: 'force', behind: 'farForce' },
  { label: 'Current', quantity: 'current', height: 80, channel: 'current', behind: 'command' },
  { label: 'Jaw speed', quantity: 'speed', height: 96, channel: 'speed', behind: 'wantedSpeed' },
]
