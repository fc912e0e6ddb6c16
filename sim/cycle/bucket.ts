/** Decimation that loses no peak: the extremes of every channel over a bucket of samples, in the order in which they came. */
import { Block } from '../core/block.ts'
import { item, type Numbers, numbers, put, whole, widen } from '../core/native.ts'

/** Samples that are kept as they are before their extremes are taken together: a processor then holds these while it goes through them. */
const KEPT: i32 = 32

export class Bucket extends Block {
  /** Channels; samples in a full bucket, which may change between one and the next; samples in it now. */
  width: f64 = 0
  size: f64 = 1
  filled: f64 = 0
  /** Values at the latest sample, a channel each, as `latest` leaves them. */
  now: Numbers = numbers(0)
  /** The latest samples, a row each, and how many of them the extremes do not know yet. */
  kept: Numbers = numbers(0)
  private waiting: f64 = 0
  private low: Numbers = numbers(0)
  private high: Numbers = numbers(0)
  private rising: Numbers = numbers(0)

  /** Makes room for so many channels. */
  prepare(width: i32): void {
    this.width = width
    const room: i32 = this.room()
    this.now = numbers(room)
    this.kept = numbers(room * KEPT)
    this.waiting = 0
    this.low = numbers(room)
    this.high = numbers(room)
    this.rising = numbers(room)
  }

  /** Numbers in a row. */
  private room(): i32 {
    const width: i32 = whole(this.width)
    return width + (width & 1)
  }

  /** Where in `kept` the next sample goes. */
  place(): i32 {
    return whole(this.waiting) * this.room()
  }

  /** Takes in the sample that was put there; true once the bucket is full. */
  add(): bool {
    this.waiting += 1
    this.filled += 1
    const full: bool = this.filled >= this.size
    if (full || this.waiting >= KEPT) this.take()
    return full
  }

  private take(): void {
    const rows: i32 = whole(this.waiting)
    if (rows === 0) return
    widen(this.kept, rows, this.low, this.high, this.rising, whole(this.width), this.filled === this.waiting)
    this.copy(rows - 1)
    this.waiting = 0
  }

  /** Puts the values at the latest sample into `now`. */
  latest(): void {
    if (this.waiting > 0) this.copy(whole(this.waiting) - 1)
  }

  private copy(row: i32): void {
    const room: i32 = this.room()
    for (let c: i32 = 0; c < room; c++) put(this.now, c, item(this.kept, row * room + c))
  }

  /** Empties the bucket into two rows, from `row` on, of columns that lie `stride` apart. */
  pour(columns: Numbers, stride: i32, row: i32): void {
    this.take()
    const width: i32 = whole(this.width)
    for (let c: i32 = 0; c < width; c++) {
      const rises: bool = item(this.rising, c) > 0
      const at: i32 = c * stride + row
      const low: f64 = item(this.low, c)
      const high: f64 = item(this.high, c)
      put(columns, at, rises ? low : high)
      put(columns, at + 1, rises ? high : low)
    }
    this.filled = 0
  }
}
