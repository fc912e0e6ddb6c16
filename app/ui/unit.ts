/** A unit as widgets know it: what stands behind a figure, and the way there and back. */
export interface ShownUnit {
  /** As written after a figure; a part after ^ is a power, e.g. `N/mm^1.5`. '' for a bare number. */
  symbol: string
  toShown(si: number): number
  toSi(shown: number): number
}
