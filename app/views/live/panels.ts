/** The traces that roll. */
import type { Channel } from '../../../sim/index.ts'
import type { Quantity } from '../../ui/units.ts'

export interface Panel {
  label: string
  quantity: Quantity
  height: number
  /** The channel that matters, and a thin one behind it. It has no name at its end, where the two would keep changing places. */
  channel: Channel
  behind: Channel
}

export const PANELS: Panel[] = [
  { label: 'Grip force, thin: far contact', quantity: 'force', height: 170, channel: 'force', behind: 'farForce' },
  { label: 'Current, thin: wanted', quantity: 'current', height: 84, channel: 'current', behind: 'command' },
  { label: 'Jaw speed, thin: wanted', quantity: 'speed', height: 104, channel: 'speed', behind: 'wantedSpeed' },
]
