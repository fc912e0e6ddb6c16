/** Instants and margins as jobs tell of them. */
import type { Moment } from './job.ts'

/** An instant, and the effort by then where it is known better than the record has it. */
export const momentAt = (time: number | null, effort: number | null = null): Moment | null =>
  time === null ? null : { time, effort }

/** The least of margins of which some may not be there; null: none is. */
export function nearest(margins: readonly (number | null)[]): number | null {
  const known = margins.filter((margin) => margin !== null)
  return known.length > 0 ? Math.min(...known) : null
}
