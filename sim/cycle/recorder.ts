/**
 * Records the channels of a run, decimated by buckets of time. After first touch, where milliseconds decide, the buckets are finer
 * for a while.
 */
import { Block } from '../core/block.ts'
import { highWord, item, lowWord, type Numbers, numbers, product, unsigned, whole } from '../core/native.ts'
import { Bucket } from './bucket.ts'

const BUCKETS: f64 = 1000
/** Fine buckets in place of one, and how many there are at most. */
const FINER: f64 = 4
const FINE_BUCKETS: f64 = 300
const PRIME: i32 = 16777619

export class Recorder extends Block {
  readonly bucket: Bucket = new Bucket()
  /** Rows so far, two a bucket; columns one behind the other, `stride` apart. */
  rows: f64 = 0
  stride: f64 = 0
  columns: Numbers = numbers(0)
  /** Fingerprint of the columns, as `fingerprint` leaves it. */
  hashLow: f64 = 0
  hashHigh: f64 = 0
  private fine: f64 = 1
  private coarse: f64 = 1
  private fineLeft: f64 = 0
  private touched: f64 = 0

  /** Makes room for a run of so many samples. */
  prepare(width: i32, samples: f64): void {
    this.coarse = Math.max(2, Math.ceil(samples / BUCKETS))
    this.fine = Math.max(2, Math.floor(this.coarse / FINER + 0.5))
    this.bucket.prepare(width)
    this.bucket.size = this.coarse
    this.stride = 2 * (Math.ceil(samples / this.coarse) + FINE_BUCKETS) + 2
    this.columns = numbers(width * whole(this.stride))
  }

  /** Makes room for so many buckets of one size, to be emptied by `rewind` before they are full; what is in the bucket stays. */
  prepareRoom(width: i32, size: f64, buckets: f64): void {
    this.coarse = size
    this.fine = size
    if (this.bucket.width !== width) this.bucket.prepare(width)
    this.bucket.size = size
    this.stride = 2 * buckets
    this.columns = numbers(width * whole(this.stride))
  }

  rewind(): void {
    this.rows = 0
  }

  /** Takes in the sample that was put into the bucket; the buckets are finer from the first one after a touch on. */
  sample(touched: bool): void {
    if (touched && this.touched === 0) {
      this.touched = 1
      this.fineLeft = FINE_BUCKETS
    }
    if (this.bucket.add()) this.close()
  }

  /** Ends the record. */
  finish(): void {
    if (this.bucket.filled > 0) this.close()
  }

  /** FNV-1a over the 32-bit words of all columns, two lanes: equal only where two records agree to the last bit. */
  fingerprint(): void {
    let low: i32 = -2128831035 // 0x811c9dc5
    let high: i32 = 0x01000193
    const width: i32 = whole(this.bucket.width)
    const rows: i32 = whole(this.rows)
    const stride: i32 = whole(this.stride)
    for (let c: i32 = 0; c < width; c++) {
      for (let row: i32 = 0; row < rows; row++) {
        const value: f64 = item(this.columns, c * stride + row)
        low = product(low ^ lowWord(value), PRIME)
        high = product(high ^ highWord(value), PRIME) ^ (low >>> 15)
      }
    }
    this.hashLow = unsigned(low)
    this.hashHigh = unsigned(high)
  }

  private close(): void {
    this.bucket.pour(this.columns, whole(this.stride), whole(this.rows))
    this.rows += 2
    this.bucket.size = this.fineLeft > 0 ? this.fine : this.coarse
    if (this.fineLeft > 0) this.fineLeft -= 1
  }
}
