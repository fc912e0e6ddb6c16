/** Decimation that loses no peak: the extremes of every channel over a bucket of samples, in the order in which they came. */
import type { Plant } from '../plant/plant.ts'
import type { Drive } from './drive.ts'
import { CHANNELS } from './result.ts'

const COUNT = CHANNELS.length

export class Bucket {
  /** Values at the present sample, by position in CHANNELS; time is the first. */
  readonly now = new Float64Array(COUNT)
  filled = 0
  /** Samples in a full bucket; may change between one and the next. */
  size: number
  private readonly low = new Float64Array(COUNT)
  private readonly high = new Float64Array(COUNT)
  private readonly rising = new Uint8Array(COUNT)

  constructor(size: number) {
    this.size = size
  }

  /** Fills `now`. */
  see(time: number, plant: Plant, drive: Drive, target: number): void {
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
  }

  /** Takes `now` in; true once the bucket is full. */
  add(): boolean {
    const { now, low, high, rising } = this
    if (this.filled === 0) {
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
    this.filled++
    return this.filled >= this.size
  }

  /** Empties the bucket into two rows from `row` on. */
  pour(columns: Float64Array[], row: number): void {
    for (let c = 0; c < COUNT; c++) {
      const column = columns[c]!
      const rises = this.rising[c] === 1
      column[row] = rises ? this.low[c]! : this.high[c]!
      column[row + 1] = rises ? this.high[c]! : this.low[c]!
    }
    this.filled = 0
  }
}
