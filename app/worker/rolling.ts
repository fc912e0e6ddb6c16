/** Traces that roll: the newest rows of a plant that runs on, old ones forgotten. */
import { CHANNELS, type ChannelKind, type Traces } from '../../sim/index.ts'

/** Stride of the search for the first row that is shown. */
const BLOCK = 256

export class RollingTraces {
  private readonly most: number
  private readonly kept: readonly string[]
  /** Place of each that is kept among all channels. */
  private readonly places: number[]
  private columns: Float64Array[]
  private rows = 0
  /** Rows forgotten so far. */
  private gone = 0

  /** `most`: rows that are kept, of the channels `kept`, time among them; `channels` are all, those of a grip if left out. */
  constructor(
    most: number,
    kept: readonly string[] = CHANNELS.map(({ id }) => id),
    channels: readonly ChannelKind[] = CHANNELS,
  ) {
    this.most = most
    this.kept = kept
    this.places = kept.map((id) => channels.findIndex((channel) => channel.id === id))
    this.columns = this.room()
  }

  /** `added`: new rows, one column a channel in their order. */
  append(added: Float64Array[]) {
    const fresh = Math.min(added[0]?.length ?? 0, this.most)
    if (this.rows + fresh > 2 * this.most) this.forget()
    for (const [n, place] of this.places.entries()) {
      const column = added[place]!
      this.columns[n]!.set(column.subarray(column.length - fresh), this.rows)
    }
    this.rows += fresh
  }

  /** Time of the oldest row that is certain to be there [s]; null without rows. */
  get oldest(): number | null {
    return this.rows > 0 ? this.columnOf('time')[Math.max(0, this.rows - this.most)]! : null
  }

  clear() {
    this.columns = this.room()
    this.rows = 0
    this.gone = 0
  }

  /**
   * The rows from a time on [s], and the newest sample, which does not yet fill a row, after them; at most about `most` rows, thinned
   * where there are more. Rows that come later do not show in them, nor does what was later than `to` [s].
   */
  view(
    channels: readonly string[],
    from: number,
    most: number,
    newest: Float64Array,
    to = Number.POSITIVE_INFINITY,
  ): Traces {
    const time = this.columnOf('time')
    let start = this.rows
    while (start > 0 && time[start - 1]! >= from) start -= start > BLOCK && time[start - BLOCK]! >= from ? BLOCK : 1
    start = Math.max(0, start - 1) // the line comes in from outside
    for (const [n, place] of this.places.entries()) this.columns[n]![this.rows] = newest[place]!
    let end = this.rows + 1
    while (end > start + 1 && time[end - 2]! > to) end -= end - BLOCK > start && time[end - BLOCK]! > to ? BLOCK - 1 : 1
    const group = 2 * Math.ceil((end - 1 - start) / most)
    // Groups begin at the same rows in every view, so that what is drawn rolls without a flicker.
    const first = Math.max(0, start - ((this.gone + start) % group))
    const view = (id: string) => {
      const column = this.columnOf(id)
      if (group <= 2) return column.subarray(start, end)
      return id === 'time' ? endsOf(column, first, end, group) : extremesOf(column, first, end, group)
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
    return this.kept.map(() => new Float64Array(2 * this.most + 1))
  }

  private columnOf(id: string): Float64Array {
    return this.columns[this.kept.indexOf(id)]!
  }
}

/** Rows gathered into groups of `size`, each kept as two rows with what was least and most in it: what is long ago, in little room. */
export class Gathered {
  private readonly size: number
  private readonly waiting: Float64Array[]
  private readonly time: number
  private filled = 0

  /** `size` is even. */
  constructor(size: number, channels: readonly ChannelKind[] = CHANNELS) {
    this.size = size
    this.waiting = channels.map(() => new Float64Array(size))
    this.time = channels.findIndex(({ id }) => id === 'time')
  }

  /** Takes new rows, one column a channel, and returns those of the groups that they fill. */
  take(added: Float64Array[]): Float64Array[] {
    const rows = added[0]?.length ?? 0
    const groups = Math.floor((this.filled + rows) / this.size)
    const out = this.waiting.map(() => new Float64Array(2 * groups))
    for (const [c, column] of added.entries()) {
      const waiting = this.waiting[c]!
      let { filled } = this
      let row = 0
      for (let group = 0; row < rows; ) {
        const some = Math.min(rows - row, this.size - filled)
        waiting.set(column.subarray(row, row + some), filled)
        row += some
        filled += some
        if (filled < this.size) break
        filled = 0
        out[c]!.set(
          c === this.time ? endsOf(waiting, 0, this.size, this.size) : extremesOf(waiting, 0, this.size, this.size),
          2 * group++,
        )
      }
    }
    this.filled = (this.filled + rows) % this.size
    return out
  }

  clear() {
    this.filled = 0
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
