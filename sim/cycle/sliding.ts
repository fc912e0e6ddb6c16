/** Figures of a cycle that runs on: over the last half second, and the highest effort since the output set out. */
import type { Axis } from '../axis/axis.ts'
import type { Load } from '../axis/load.ts'
import { Block, State } from '../core/block.ts'
import { item, type Numbers, numbers, put, whole } from '../core/native.ts'
import { STANDING } from '../job/sums.ts'

/** The span is made of blocks, of which the oldest is forgotten when a new one begins [s]. */
const BLOCK: f64 = 0.05
const BLOCKS: i32 = 10
/** Samples, effort, its squares, current and changes of direction of one block. */
const WIDTH: i32 = 5

class SlidingState extends State {
  /** The present block, as the blocks have come. */
  block: f64 = 0
  direction: f64 = 0
  /** Highest effort since `setOut` [N]. */
  peak: f64 = 0
}

export class Sliding extends Block {
  /** Sample period [s]. */
  period: f64 = 5e-5
  sums: Numbers = numbers(WIDTH * BLOCKS)
  readonly state: SlidingState = new SlidingState()

  sample(axis: Axis, load: Load): void {
    const s = this.state
    let from: i32 = WIDTH * (whole(s.block) % BLOCKS)
    if (item(this.sums, from) >= Math.max(1, Math.floor(BLOCK / this.period + 0.5))) {
      s.block += 1
      from = WIDTH * (whole(s.block) % BLOCKS)
      for (let k: i32 = 0; k < WIDTH; k++) put(this.sums, from + k, 0)
    }
    const effort: f64 = load.effort()
    this.add(from, 1)
    this.add(from + 1, effort)
    this.add(from + 2, effort * effort)
    this.add(from + 3, axis.current())
    const most: f64 = load.most()
    if (most > s.peak) s.peak = most
    const speed: f64 = axis.state.motorSpeed
    const direction: f64 = speed > STANDING ? 1 : speed < -STANDING ? -1 : 0
    if (direction === 0) return
    if (direction === -s.direction) this.add(from + 4, 1)
    s.direction = direction
  }

  /** Sum of one kind over all blocks: 0 samples, 1 effort, 2 its squares, 3 current, 4 changes of direction. */
  total(kind: i32): f64 {
    let sum: f64 = 0
    for (let n: i32 = 0; n < BLOCKS; n++) sum += item(this.sums, WIDTH * n + kind)
    return sum
  }

  private add(index: i32, value: f64): void {
    put(this.sums, index, item(this.sums, index) + value)
  }
}
