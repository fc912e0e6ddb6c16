/** Fewer rows of long columns, for drawing: of each bucket of rows those in which a column is lowest or highest. */

/** Rising row numbers; all where there are no more than `most`. Rows without a figure are never an extreme. */
export function rowsKept(columns: readonly Float64Array[], most: number): Int32Array {
  const rows = columns[0]?.length ?? 0
  if (rows <= most) return Int32Array.from({ length: rows }, (_, row) => row)
  const buckets = Math.max(1, Math.floor(most / (2 * columns.length)))
  const kept: number[] = []
  for (let b = 0; b < buckets; b++) {
    const from = Math.floor((b * rows) / buckets)
    const to = Math.floor(((b + 1) * rows) / buckets)
    const ends = columns.flatMap((column) => extremesOf(column, from, to))
    kept.push(...[...new Set(ends)].sort((a, b) => a - b))
  }
  return Int32Array.from(kept)
}

function extremesOf(column: Float64Array, from: number, to: number): number[] {
  let low = from
  let high = from
  for (let row = from + 1; row < to; row++) {
    const value = column[row]!
    if (value < column[low]! || Number.isNaN(column[low]!)) low = row
    if (value > column[high]! || Number.isNaN(column[high]!)) high = row
  }
  return from < to ? [low, high] : []
}

/** A column as a small picture shows it. */
export function sketchOf(column: Float64Array, most: number): Float64Array {
  const rows = rowsKept([column], most)
  return Float64Array.from(rows, (row) => column[row]!)
}
