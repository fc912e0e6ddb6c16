/** Traces that grow while a run streams in. */
import { CHANNELS, type Traces } from '../../sim/index.ts'

export class GrowingTraces {
  rows = 0
  private columns: Float64Array[] = CHANNELS.map(() => new Float64Array(0))

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
      CHANNELS.map((channel, index) => [channel.id, this.columns[index]!.subarray(0, this.rows)]),
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
