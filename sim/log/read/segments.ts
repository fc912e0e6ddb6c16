/** Rows to recordings: where one ends and the next begins, and which rows belong to none. */
import type { LogFault } from './facts.ts'
import { medianRise } from './stats.ts'
import type { Skips, Table } from './table.ts'

/** Rows of one recording. Their stamps rise strictly. */
export interface Segment {
  /** Places of the rows in the table. */
  rows: Uint32Array
  repeated: number
}

/** Fewest rows of a recording. */
const FEWEST = 3
/** A stamp that goes back by fewer steps than this, and not to the start, is no restart. */
const RESTART = 10
/** Steps that are a gap, in medians. */
export const GAP = 3

/** `stamps` of all rows [raw]; `parted`: rows before which the number of the recording changes. */
export function segmentsByStamps(
  table: Table,
  stamps: Float64Array,
  parted: readonly number[],
  skips: Skips,
): { segments: Segment[]; fault: LogFault | null } {
  const cuts = new Set([...sensible(table.breaks, table.rows), ...parted])
  const soft = new Set(sensible(table.gaps, table.rows))
  const median = medianRise(stamps)
  const builder = new Builder(table, skips)
  let before = Number.NaN
  let pending = false
  let waiting = false
  for (let row = 0; row < stamps.length; row++) {
    pending ||= cuts.has(row)
    waiting ||= soft.has(row)
    const stamp = stamps[row]!
    if (Number.isNaN(stamp)) {
      skips.add(table.lines[row]!, { kind: 'no-time' })
      continue
    }
    const step = stamp - before
    if (builder.count > 0 && (pending || (waiting && !(step >= 0 && step <= GAP * median)))) builder.close()
    if (builder.count > 0 && step < 0) {
      if (!builder.restarts(stamps, row, median))
        return { segments: [], fault: { kind: 'backwards', line: table.lines[row]!, from: before, to: stamp } }
      builder.close()
    }
    pending = waiting = false
    if (builder.count > 0 && step === 0) builder.repeat(row)
    else builder.add(row, stamp)
    before = stamp
  }
  builder.close()
  return { segments: builder.segments, fault: null }
}

/** Where rows follow each other at a rate, blank lines part as lines of text do. */
export function segmentsByRate(table: Table, parted: readonly number[], skips: Skips): Segment[] {
  const cuts = [...new Set([...sensible([...table.breaks, ...table.gaps], table.rows), ...parted, table.rows])]
  const builder = new Builder(table, skips)
  let row = 0
  for (const cut of cuts.sort((a, b) => a - b)) {
    for (; row < cut; row++) builder.add(row, row)
    builder.close()
  }
  return builder.segments
}

/** Lines between nearly all rows part nothing. */
const sensible = (places: readonly number[], rows: number): readonly number[] =>
  places.length > rows / FEWEST ? [] : places

class Builder {
  readonly segments: Segment[] = []
  count = 0
  private readonly table: Table
  private readonly skips: Skips
  private rows: number[] = []
  private first = 0
  private last = 0
  private repeats: number[] = []

  constructor(table: Table, skips: Skips) {
    this.table = table
    this.skips = skips
  }

  add(row: number, stamp: number): void {
    if (this.count === 0) this.first = stamp
    this.last = stamp
    this.rows.push(row)
    this.count++
  }

  repeat(row: number): void {
    this.repeats.push(row)
  }

  /** Whether a recording begins anew at this row, at which the stamp goes back. */
  restarts(stamps: Float64Array, row: number, median: number): boolean {
    const stamp = stamps[row]!
    const next = after(stamps, row)
    if (next < stamp) return false
    // The row before stood out, and this one goes on where that one should have been.
    const goesOn = this.count > 1 && stamp > this.first && stamp - stamps[this.rows.at(-2)!]! <= GAP * median
    if (goesOn && stamp > stamps[this.rows.at(-2)!]!) return false
    return stamp <= this.first + median || this.last - stamp > RESTART * median
  }

  close(): void {
    const { rows, repeats, table } = this
    const lineOf = (row: number) => table.lines[row]!
    if (rows.length >= FEWEST) {
      this.segments.push({ rows: Uint32Array.from(rows), repeated: repeats.length })
      for (const row of repeats) this.skips.add(lineOf(row), { kind: 'repeated' })
    } else if (rows.length > 0) {
      const all = [...rows, ...repeats]
      const why = repeats.length > 0 ? { kind: 'standing' as const } : { kind: 'short' as const, rows: rows.length }
      for (const row of all.sort((a, b) => a - b)) this.skips.add(lineOf(row), why)
    }
    this.rows = []
    this.repeats = []
    this.count = 0
  }
}

/** The next stamp; Infinity behind the last. */
function after(stamps: Float64Array, row: number): number {
  for (let next = row + 1; next < stamps.length; next++) if (!Number.isNaN(stamps[next]!)) return stamps[next]!
  return Infinity
}
