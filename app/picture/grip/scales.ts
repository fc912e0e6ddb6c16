/** Scales that stay the same through a run and for all lanes, so that arrows and magnifiers can be compared. */
export interface PictureScales {
  /** Force of the longest arrow [N]. */
  force: number
  /** Largest squeeze that the magnifier has to show [m]. */
  squeeze: number
}

export interface ForceEdges {
  /** Least grip force that holds, and most that the part takes [N]; null: no such edge. */
  least: number | null
  most: number | null
}

/** The longest arrow: room for the settled forces and the window; a peak far beyond is drawn broken. */
export function forceScale(settled: number[], peaks: number[], window: ForceEdges): number {
  const usual = Math.max(0, ...settled, window.least ?? 0)
  const peak = Math.max(0, ...peaks)
  const most = window.most !== null && window.most <= 3 * usual ? 1.12 * window.most : 0
  const scale = Math.max(1.3 * usual, most, Math.min(1.05 * peak, 2.5 * usual))
  return scale > 0 ? scale : Math.max(peak, 1)
}

/** Largest number 1, 2 or 5 times a power of ten that is at most `value`. */
export function roundBelow(value: number): number {
  if (!(value > 0)) return 0
  const power = 10 ** Math.floor(Math.log10(value))
  const digit = value / power
  return (digit >= 5 ? 5 : digit >= 2 ? 2 : 1) * power
}

/** The same with 4 as well: factors as they are written beside a magnifier. */
export function magnification(value: number): number {
  if (!(value > 1)) return 1
  const power = 10 ** Math.floor(Math.log10(value))
  const digit = value / power
  return (digit >= 5 ? 5 : digit >= 4 ? 4 : digit >= 2 ? 2 : 1) * power
}
