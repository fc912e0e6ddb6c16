/** What motor and drive are rated for, and what a run asked of them. It stands beside the verdict on the work, never instead of it. */
import { timeToLimit } from '../axis/warming.ts'
import type { Scenario } from '../scenario/index.ts'
import type { RunEnd } from './job.ts'
import type { Sums } from './sums.ts'

export const RATINGS = ['continuousCurrent', 'peakCurrent', 'windingTemperature', 'busPower'] as const
export type Rating = (typeof RATINGS)[number]

/** A rating that is exceeded; in A, °C or W by its kind. */
export interface Overload {
  rating: Rating
  of: 'motor' | 'drive'
  /** What the run asked for, what is allowed, and by how much it is exceeded. */
  value: number
  limit: number
  over: number
}

/** Currents and power count as above their rating from this share on, less than the third digit; noise makes as much. */
const TOLERANCE = 0.005

interface Asked {
  of: Overload['of']
  value: number
  /** Undefined: not rated. */
  limit: number | undefined
  tolerance: number
}

/** Every rating that a run has exceeded. `period` of the current loop [s]; a run that left its rails keeps no current up. */
export function overloadsOf(scenario: Scenario, { sums, period, left }: Pick<RunEnd, 'sums' | 'period' | 'left'>) {
  const asked = askedOf(scenario, sums, period)
  if (!Number.isNaN(left)) asked.continuousCurrent.value = Number.NaN
  return RATINGS.flatMap((rating): Overload[] => {
    const { of, value, limit, tolerance } = asked[rating]
    const exceeds = limit !== undefined && Number.isFinite(value) && value > limit * (1 + tolerance)
    return exceeds ? [{ rating, of, value, limit, over: value - limit }] : []
  })
}

function askedOf({ actuator, drive, run }: Scenario, sums: Sums, period: number): Record<Rating, Asked> {
  const { continuousCurrent, peakCurrent, thermal } = actuator.motor
  const lasting = run.cycle === null ? heldCurrent(sums) : dutyCurrent(sums, period, run.cycle)
  return {
    continuousCurrent: { of: 'motor', value: lasting, limit: continuousCurrent, tolerance: TOLERANCE },
    peakCurrent: { of: 'motor', value: sums.peakCurrent, limit: peakCurrent, tolerance: TOLERANCE },
    windingTemperature: { of: 'motor', value: sums.hottest, limit: thermal.limit, tolerance: 0 },
    busPower: { of: 'drive', value: sums.peakPower, limit: drive.busPower, tolerance: TOLERANCE },
  }
}

/** Rms current of the settled window [A], with which a single grip goes on for as long as nobody ends it; NaN: it did not settle. */
const heldCurrent = ({ heating, count }: Sums) => Math.sqrt(heating / count)

/** Rms current of a duty whose pauses are without current [A]. */
const dutyCurrent = ({ squares }: Sums, period: number, cycle: number) => Math.sqrt((squares * period) / cycle)

/**
 * How long the settled current may be held from the end of the settled window on, until the winding reaches its limit [s]; Infinity:
 * for ever, NaN: no settled window.
 */
export function holdTime({ actuator }: Scenario, sums: Sums): number {
  if (sums.count === 0) return Number.NaN
  const { resistance, thermal } = actuator.motor
  const { winding, housing } = sums
  return timeToLimit(thermal, resistance, heldCurrent(sums), { winding, housing })
}
