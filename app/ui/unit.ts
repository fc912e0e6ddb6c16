/** A unit as widgets know it: what stands behind a figure, and the way there and back. */
export interface ShownUnit {
  /** As written after a figure; a part after ^ is a power, e.g. `N/mm^1.5`. '' for a bare number. */
  symbol: string
  toShown(si: number): number
  toSi(shown: number): number
  /** A figure with another unit behind it in SI; null: that unit does not measure this. Left out: no other unit is read. */
  typed?(figure: number, unit: string): number | null
  /** Some units that may be typed. */
  others?(): string[]
}
