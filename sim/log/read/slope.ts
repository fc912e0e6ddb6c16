/** Whether the position moves as the speed says, as far as times are told rightly. */
import type { Guessed } from './guess.ts'

interface Motion {
  position: Float64Array
  /** Per metre and metre a second. */
  ratio: number
  speed: Float64Array
}

/** Position and speed in units of known size, or both in turns. */
function motionOf(columns: readonly Guessed[]): Motion | null {
  const position = columns.find(({ channel }) => channel === 'travel')
  const speed = columns.find(({ channel }) => channel === 'speed')
  if (!position?.known || !speed?.known) return null
  const sized = position.known.size && speed.known.size && speed.known.size.factor / position.known.size.factor
  const turned = position.known.turns && speed.known.turns && speed.known.turns / position.known.turns
  const ratio = (sized ?? turned ?? 0) * ((speed.choice?.scale ?? 1) / (position.choice?.scale ?? 1))
  return ratio === 0 ? null : { position: position.raw.values, speed: speed.raw.values, ratio }
}

/** Stretches over which ways are compared. */
const STRETCHES = 40
/** How near to a power of ten the slope must lie. */
const NEAR = 0.25

/**
 * By which power of ten times must be multiplied so that the position moves as the speed says: 1 where it does so already, null where
 * the two do not tell. `stamps` null: a row each. Least squares over ways of many rows, so that noise and lags of the speed count little.
 */
export function slopeOf(stamps: Float64Array | null, scale: number, columns: readonly Guessed[]): number | null {
  const motion = motionOf(columns)
  if (!motion) return null
  const { position, speed, ratio } = motion
  const time = (row: number) => (stamps ? stamps[row]! : row) * scale
  let [both, own] = [0, 0]
  for (let stretch = 0; stretch < STRETCHES; stretch++) {
    const from = Math.floor((stretch * (position.length - 1)) / STRETCHES)
    const to = Math.floor(((stretch + 1) * (position.length - 1)) / STRETCHES)
    let way = 0
    for (let row = from + 1; row <= to; row++) {
      const step = time(row) - time(row - 1)
      way += step >= 0 ? step * (speed[row]! + speed[row - 1]!) * 0.5 * ratio : Number.NaN
    }
    const moved = position[to]! - position[from]!
    if (!Number.isFinite(way * moved)) continue
    both += moved * way
    own += way * way
  }
  const slope = Math.abs(both / own)
  const power = 10 ** Math.round(Math.log10(slope))
  return Number.isFinite(slope) && slope > 0 && Math.abs(slope / power - 1) < NEAR ? power : null
}
