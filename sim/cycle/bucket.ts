/** Decimation that loses no peak: the extremes of every channel over a bucket of samples, in the order in which they came. */
import { Block } from '../core/block.ts'
import { item, type Numbers, numbers, put, whole, widen } from '../core/native.ts'

export class Bucket extends Block {
  /** Channels; samples in a full bucket, which may change between one and the next; samples in it now. */
  width: f64 = 0
  size: f64 = 1
  filled: f64 = 0
  /** Values at the present sample, a channel each. */
  now: Numbers = numbers(0)
  private low: Numbers = numbers(0)
  private high: Numbers = numbers(0)
  private rising: Numbers = numbers(0)

  /** Makes room for so many channels. */
  prepare(width: i32): void {
    this.width = width
    const room: i32 = width + (width % 2)
    this.now = numbers(room)
    this.low = numbers(room)
    this.high = numbers(room)
    this.rising = numbers(room)
  }

  /** Takes `now` in; true once the bucket is full. */
  add(): bool {
    if (this.filled === 0) this.first()
    else widen(this.now, this.low, this.high, this.rising, whole(this.width))
    this.filled += 1
    return this.filled >= this.size
  }

  /** Empties the bucket into two rows, from `row` on, of columns that lie `stride` apart. */
  pour(columns: Numbers, stride: i32, row: i32): void {
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

  private first(): void {
    const width: i32 = whole(this.width)
    for (let c: i32 = 0; c < width; c++) {
      const value: f64 = item(this.now, c)
      put(this.low, c, value)
      put(this.high, c, value)
      put(this.rising, c, 1)
    }
  }
}
