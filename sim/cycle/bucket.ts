/** Decimation that loses no peak: the extremes of every channel over a bucket of samples, in the order in which they came. */
import { Block } from '../core/block.ts'
import { item, type Numbers, numbers } from '../core/native.ts'

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
    this.now = numbers(width)
    this.low = numbers(width)
    this.high = numbers(width)
    this.rising = numbers(width)
  }

  /** Takes `now` in; true once the bucket is full. */
  add(): bool {
    if (this.filled === 0) this.first()
    else this.further()
    this.filled += 1
    return this.filled >= this.size
  }

  /** Empties the bucket into two rows, from `row` on, of columns that lie `stride` apart. */
  pour(columns: Numbers, stride: i32, row: i32): void {
    const width: i32 = this.width as i32
    for (let c: i32 = 0; c < width; c++) {
      const rises: bool = item(this.rising, c) > 0
      const at: i32 = c * stride + row
      columns[at] = rises ? item(this.low, c) : item(this.high, c)
      columns[at + 1] = rises ? item(this.high, c) : item(this.low, c)
    }
    this.filled = 0
  }

  private first(): void {
    const width: i32 = this.width as i32
    for (let c: i32 = 0; c < width; c++) {
      this.low[c] = item(this.now, c)
      this.high[c] = item(this.now, c)
      this.rising[c] = 1
    }
  }

  private further(): void {
    const width: i32 = this.width as i32
    for (let c: i32 = 0; c < width; c++) {
      const value: f64 = item(this.now, c)
      if (value > item(this.high, c)) {
        this.high[c] = value
        this.rising[c] = 1
      } else if (value < item(this.low, c)) {
        this.low[c] = value
        this.rising[c] = 0
      }
    }
  }
}
