/** Traces that grow while a run streams in. */
import { CHANNELS, type Traces } from '../../sim/index.ts'

export class GrowingTraces {
  rows = 0
  private columns = CHANNELS.map(() => new Float64Array(2048))

  /** `added`: new rows, one column a channel. */
  append(added: Float64Array[]) {
    const needed = this.rows + (added[0]?.length ?? 0)
    const room = this.columns[0]!.length
    if (needed > room) this.grow(Math.max(needed, 2 * room))
    for (const [index, column] of added.entries()) this.columns[index]!.set(column, this.rows)
    this.rows = needed
  }

  /** Views of exactly the rows that are there; later rows do not show in them. */
  view(): Traces {
    return Object.fromEntries(
      CHANNELS.map((channel, index) => [channel.id, this.columns[index]!.subarray(0, this.rows)]),
    ) as Traces
  }

  private grow(length: number) {
    this.columns = this.columns.map((old) => {
      const longer = new Float64Array(length)
      longer.set(old)
      return longer
    })
  }
}
