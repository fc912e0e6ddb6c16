/**
 * Records the channels of a run, decimated: each bucket of time gives two rows that hold the bucket's extremes of every
 * channel in the order in which they came, so that no peak is lost.
 */
import type { Plant } from '../plant/plant.ts'
import type { Drive } from './drive.ts'
import { CHANNELS, type Channel, type Traces } from './result.ts'

const BUCKETS = 1000
/** Buckets in a chunk handed out while the run goes on. */
const CHUNK = 100
const COUNT = CHANNELS.length

/** New rows, a column a channel in the order of CHANNELS; false asks the run to stop. */
export type OnChunk = (columns: Float64Array[]) => boolean

export class Recorder {
  /** Values at the present sample, by position in CHANNELS; time is the first. */
  readonly now = new Float64Array(COUNT)
  rows = 0
  private readonly columns: Float64Array[]
  private readonly low = new Float64Array(COUNT)
  private readonly high = new Float64Array(COUNT)
  private readonly rising = new Uint8Array(COUNT)
  private readonly perBucket: number
  private inBucket = 0
  private handed = 0
  private readonly onChunk: OnChunk | undefined

  constructor(samples: number, onChunk?: OnChunk) {
    this.perBucket = Math.max(2, Math.ceil(samples / BUCKETS))
    const rows = 2 * Math.ceil(samples / this.perBucket) + 2
    this.columns = CHANNELS.map(() => new Float64Array(rows))
    this.onChunk = onChunk
  }

  /** Takes one sample in; false: whoever receives the chunks has asked to stop. */
  sample(time: number, plant: Plant, drive: Drive, target: number): boolean {
    const { now } = this
    now[0] = time
    now[1] = plant.nearMost
    now[2] = plant.farMost
    now[3] = plant.winding.current
    now[4] = drive.command
    now[5] = drive.voltage
    now[6] = plant.jawX
    now[7] = target
    now[8] = plant.x
    now[9] = plant.jawV
    now[10] = plant.partX
    now[11] = plant.slip.sag
    now[12] = plant.slip.drift
    now[13] = 0.5 * (plant.near.dent + plant.far.dent) // each side counts the flattening of the whole part
    now[14] = plant.heat.winding
    now[15] = drive.reading
    now[16] = drive.strategy.wantedSpeed
    return this.take()
  }

  /** Takes `now` in. */
  take(): boolean {
    const { now, low, high, rising } = this
    if (this.inBucket === 0) {
      low.set(now)
      high.set(now)
      rising.fill(1)
    } else {
      for (let c = 0; c < COUNT; c++) {
        const value = now[c]!
        if (value > high[c]!) {
          high[c] = value
          rising[c] = 1
        } else if (value < low[c]!) {
          low[c] = value
          rising[c] = 0
        }
      }
    }
    this.inBucket++
    if (this.inBucket < this.perBucket) return true
    this.close()
    return this.rows - this.handed < 2 * CHUNK || this.hand()
  }

  /** Ends the record and hands out what is left. */
  finish(): Traces {
    if (this.inBucket > 0) this.close()
    this.hand()
    const traces = {} as Record<Channel, Float64Array>
    CHANNELS.forEach(({ id }, c) => {
      traces[id] = this.columns[c]!.slice(0, this.rows)
    })
    return traces
  }

  private close(): void {
    for (let c = 0; c < COUNT; c++) {
      const column = this.columns[c]!
      const rises = this.rising[c] === 1
      column[this.rows] = rises ? this.low[c]! : this.high[c]!
      column[this.rows + 1] = rises ? this.high[c]! : this.low[c]!
    }
    this.rows += 2
    this.inBucket = 0
  }

  private hand(): boolean {
    if (!this.onChunk || this.rows === this.handed) return true
    const going = this.onChunk(this.columns.map((column) => column.slice(this.handed, this.rows)))
    this.handed = this.rows
    return going
  }
}
