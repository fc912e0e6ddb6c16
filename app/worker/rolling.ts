/** Traces that roll: the newest rows of a plant that runs on, old ones forgotten. */
import { CHANNELS, type Channel, type Traces } from '../../sim/index.ts'

const INDEX = Object.fromEntries(CHANNELS.map(({ id }, index) => [id, index])) as Record<Channel, number>

/** Stride of the search for the first row that is shown. */
const BLOCK = 256

export class RollingTraces {
  private readonly most: number
  private columns: Float64Array[]
  private rows = 0
  /** Rows forgotten so far. */
  private gone = 0

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
    this.gone = 0
  }

  /**
   * The rows from a time on [s], and the newest sample, which does not yet fill a row, after them; at most about `most` rows, thinned
   * where there are more. Rows that come later do not show in them.
   */
  view(channels: Channel[], from: number, most: number, newest: Float64Array): Traces {
    const time = this.columns[0]!
    let start = this.rows
    while (start > 0 && time[start - 1]! >= from) start -= start > BLOCK && time[start - BLOCK]! >= from ? BLOCK : 1
    start = Math.max(0, start - 1) // the line comes in from outside
    for (const [index, column] of this.columns.entries()) column[this.rows] = newest[index]!
    const group = 2 * Math.ceil((this.rows - start) / most)
    // Groups begin at the same rows in every view, so that what is drawn rolls without a flicker.
    const first = Math.max(0, start - ((this.gone + start) % group))
    const view = (id: Channel) => {
      const column = this.columns[INDEX[id]]!
      if (group <= 2) return column.subarray(start, this.rows + 1)
      return id === 'time'
        ? endsOf(column, first, this.rows + 1, group)
        : extremesOf(column, first, this.rows + 1, group)
    }
    return Object.fromEntries(channels.map((id) => [id, view(id)])) as Traces
  }

  /** New columns rather than rows that move: views handed out before stay what they are. */
  private forget() {
    const from = Math.max(0, this.rows - this.most)
    const kept = this.columns.map((column) => column.subarray(from, this.rows))
    this.gone += from
    this.columns = this.room()
    for (const [index, column] of kept.entries()) this.columns[index]!.set(column)
    this.rows = kept[0]!.length
  }

  private room() {
    return CHANNELS.map(() => new Float64Array(2 * this.most + 1))
  }
}

/** Least and most of each group of rows, in the order in which they came. */
function extremesOf(column: Float64Array, from: number, to: number, group: number): Float64Array {
  const thin = new Float64Array(2 * Math.ceil((to - from) / group))
  let out = 0
  for (let start = from; start < to; start += group) {
    const end = Math.min(to, start + group)
    let low = start
    let high = start
    for (let row = start + 1; row < end; row++) {
      if (column[row]! < column[low]!) low = row
      if (column[row]! > column[high]!) high = row
    }
    thin[out++] = column[Math.min(low, high)]!
    thin[out++] = column[Math.max(low, high)]!
  }
  return thin
}

/** First and last row of each group. */
function endsOf(column: Float64Array, from: number, to: number, group: number): Float64Array {
  const thin = new Float64Array(2 * Math.ceil((to - from) / group))
  let out = 0
  for (let start = from; start < to; start += group) {
    thin[out++] = column[start]!
    thin[out++] = column[Math.min(to, start + group) - 1]!
  }
  return thin
}
