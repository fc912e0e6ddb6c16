/** Traces that roll: the newest rows of a plant that runs on, old ones forgotten. */
import { CHANNELS, type Traces } from '../../sim/index.ts'

export class RollingTraces {
  private readonly most: number
  private columns: Float64Array[]
  private rows = 0

  /** `most`: rows that are kept. */
  constructor(most: number) {
    this.most = most
    this.columns = this.room()
  }

  /** `added`: new rows, one column a channel in the order of CHANNELS. */
  append(added: Float64Array[]) {
    const fresh = Math.min(added[0]?.length ?? 0, this.most)
    if (this.rows + fresh > 2 * this.most) this.forget()
    for (const [index, column] of added.entries())
      this.columns[index]!.set(column.subarray(column.length - fresh), this.rows)
    this.rows += fresh
  }

  clear() {
    this.columns = this.room()
    this.rows = 0
  }

  /**
   * Views of the rows from a time on [s], and of the newest sample, which does not yet fill a row, after them. Rows that come later
   * do not show in the views.
   */
  view(from: number, newest: Float64Array): Traces {
    const time = this.columns[0]!
    let first = this.rows
    while (first > 0 && time[first - 1]! >= from) first--
    const start = Math.max(0, first - 1) // the line comes in from outside
    for (const [index, column] of this.columns.entries()) column[this.rows] = newest[index]!
    return Object.fromEntries(
      CHANNELS.map(({ id }, index) => [id, this.columns[index]!.subarray(start, this.rows + 1)]),
    ) as Traces
  }

  /** New columns rather than rows that move: views handed out before stay what they are. */
  private forget() {
    const kept = this.columns.map((column) => column.subarray(Math.max(0, this.rows - this.most), this.rows))
    this.columns = this.room()
    for (const [index, column] of kept.entries()) this.columns[index]!.set(column)
    this.rows = kept[0]!.length
  }

  private room() {
    return CHANNELS.map(() => new Float64Array(2 * this.most + 1))
  }
}
