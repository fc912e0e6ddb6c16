/** Traces that grow while a run streams in. */
import { CHANNELS, type ChannelKind, type Traces } from '../../sim/index.ts'

export class GrowingTraces {
  rows = 0
  private readonly channels: readonly ChannelKind[]
  private columns: Float64Array[]

  /** Of a grip, unless other channels are named. */
  constructor(channels: readonly ChannelKind[] = CHANNELS) {
    this.channels = channels
    this.columns = channels.map(() => new Float64Array(0))
  }

  /** `added`: new rows, one column a channel, or none. The first ones are kept as they are, later ones copied behind them. */
  append(added: Float64Array[]) {
    const more = added[0]?.length ?? 0
    if (this.rows === 0 && more > 0) this.columns = added
    else if (more > 0) this.copy(added, this.rows + more)
    this.rows += more
  }

  /** Views of exactly the rows that are there; later rows do not show in them. */
  view(): Traces {
    return Object.fromEntries(
      this.channels.map((channel, index) => [channel.id, this.columns[index]!.subarray(0, this.rows)]),
    ) as Traces
  }

  private copy(added: Float64Array[], needed: number) {
    if (needed > this.columns[0]!.length) {
      this.columns = this.columns.map((old) => {
        const longer = new Float64Array(Math.max(needed, 2 * old.length))
        longer.set(old)
        return longer
      })
    }
    for (const [index, column] of added.entries()) this.columns[index]!.set(column, this.rows)
  }
}
