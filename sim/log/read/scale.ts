/** What one of a column is in SI. */
import { type Channel, channelUnits } from './channels.ts'
import type { Guessed } from './guess.ts'
import { measures } from './units.ts'

export interface Scale {
  /** Null: not known. */
  scale: number | null
  /** [SI] */
  offset: number
  /** SI unit; '' where it is not known or there is none. */
  si: string
}

/** Zeros of temperatures [°C]. */
const ZEROS: Record<string, number> = { '°F': -32 / 1.8, K: -273.15 }

/** Of a column that holds `channel`. */
export function scaleOf({ known, unit, choice, turning }: Guessed, channel: Channel): Scale {
  const units = channelUnits(channel, turning)
  const offset = choice?.offset ?? 0
  const times = choice?.scale
  const plain = units.length === 0
  if (plain) return { scale: times ?? 1, offset, si: '' }
  if (channel === 'temperature' && known?.size && measures(known, 'K'))
    return { scale: known.size.factor * (times ?? 1), offset: offset + (ZEROS[known.text] ?? 0), si: '°C' }
  const si = known && units.find((each) => measures(known, each))
  if (si) return { scale: known.size!.factor * (times ?? 1), offset, si }
  // An angle is one where it is asked for as such, and a way elsewhere.
  const angle = known?.rate ? 'rad/s' : 'rad'
  if (known?.turns && units.includes(angle))
    return { scale: 2 * Math.PI * known.turns * (times ?? 1), offset, si: angle }
  if (times === undefined) return { scale: null, offset, si: '' }
  const own = units.length === 1 ? units[0]! : ''
  const turns = known?.turns ?? null
  // A name of a rotary unit and metres per turn; else SI value of one, whatever it is called.
  return turns !== null && unit !== '' ? { scale: turns * times, offset, si: own } : { scale: times, offset, si: own }
}
