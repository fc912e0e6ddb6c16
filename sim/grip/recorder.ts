/**
 * Records the channels of a run, decimated by buckets of time, and hands them out piece by piece while it goes on. After first
 * contact, where milliseconds decide, the buckets are finer for a while.
 */
import type { Plant } from '../plant/plant.ts'
import { Bucket } from './bucket.ts'
import type { Drive } from './drive.ts'
import { CHANNELS, type Channel, type Traces } from './result.ts'

const BUCKETS = 1000
/** Fine buckets in place of one, and how many there are at most. */
const FINER = 4
const FINE_BUCKETS = 300
/** Buckets in a chunk handed out while the run goes on. */
const CHUNK = 100

/** New rows, a column a channel in the order of CHANNELS; false asks the run to stop. */
export type OnChunk = (columns: Float64Array[]) => boolean

export class Recorder {
  /** Values at the present sample, by position in CHANNELS; time is the first. */
  readonly now: Float64Array
  rows = 0
  private readonly bucket: Bucket
  private readonly columns: Float64Array[]
  private handed = 0
  private readonly fine: number
  private readonly coarse: number
  private fineLeft = 0
  private touched = false
  private readonly onChunk: OnChunk | undefined

  constructor(samples: number, onChunk?: OnChunk) {
    const perBucket = Math.max(2, Math.ceil(samples / BUCKETS))
    this.coarse = perBucket
    this.fine = Math.max(2, Math.round(perBucket / FINER))
    this.bucket = new Bucket(perBucket)
    this.now = this.bucket.now
    const rows = 2 * (Math.ceil(samples / perBucket) + FINE_BUCKETS) + 2
    this.columns = CHANNELS.map(() => new Float64Array(rows))
    this.onChunk = onChunk
  }

  /** Takes one sample in; false: whoever receives the chunks has asked to stop. */
  sample(time: number, plant: Plant, drive: Drive, target: number): boolean {
    this.bucket.see(time, plant, drive, target)
    if (!this.touched && plant.contactTime >= 0) this.refine()
    return this.take()
  }

  /** Takes `now` in. */
  take(): boolean {
    if (!this.bucket.add()) return true
    this.close()
    return this.rows - this.handed < 2 * CHUNK || this.hand()
  }

  /** Ends the record and hands out what is left. */
  finish(): Traces {
    if (this.bucket.filled > 0) this.close()
    this.hand()
    const traces = {} as Record<Channel, Float64Array>
    CHANNELS.forEach(({ id }, c) => {
      traces[id] = this.columns[c]!.slice(0, this.rows)
    })
    return traces
  }

  /** From the next bucket on. */
  private refine(): void {
    this.touched = true
    this.fineLeft = FINE_BUCKETS
  }

  private close(): void {
    this.bucket.pour(this.columns, this.rows)
    this.rows += 2
    this.bucket.size = this.fineLeft > 0 ? this.fine : this.coarse
    if (this.fineLeft > 0) this.fineLeft--
  }

  private hand(): boolean {
    if (!this.onChunk || this.rows === this.handed) return true
    const going = this.onChunk(this.columns.map((column) => column.slice(this.handed, this.rows)))
    this.handed = this.rows
    return going
  }
}
