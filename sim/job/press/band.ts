/** The band of force over depth that a joint has to stay in, checked wherever the bushing gets deeper than before. */
import { Block, State } from '../../core/block.ts'
import { item, type Numbers, numbers, whole } from '../../core/native.ts'

/** A point of the band: depth [m], least and most force there [N]. */
export const POINT_SIZE: i32 = 3

class BandState extends State {
  /** Deepest so far [m], and the point behind which it lies. */
  deepest: f64 = 0
  from: f64 = 0
  /** Least of force over the band's lower end, and of its upper end over the force; the depth of the smaller one [m]. */
  closest: f64 = Infinity
  where: f64 = NaN
  /** Where and when the force first lay below, above for whatever reason, and above though not by tilt alone [m], [s]. */
  below: f64 = NaN
  belowTime: f64 = NaN
  above: f64 = NaN
  aboveTime: f64 = NaN
  jammed: f64 = NaN
}

export class Band extends Block {
  points: Numbers = numbers(0)
  count: f64 = 0
  readonly state: BandState = new BandState()

  /** The band itself has changed. */
  settle(): void {
    this.state.from = 0
  }

  /** A force [N], `tilted` of it by tilt, at a depth [m] and time [s]. */
  check(depth: f64, force: f64, tilted: f64, time: f64): void {
    const s = this.state
    if (depth <= s.deepest) return
    s.deepest = depth
    if (this.count < 2 || depth < this.at(0, 0)) return
    while (s.from < this.count - 2 && depth > this.at(s.from + 1, 0)) s.from += 1
    if (depth > this.at(s.from + 1, 0)) return
    const width: f64 = this.at(s.from + 1, 0) - this.at(s.from, 0)
    const share: f64 = width > 0 ? (depth - this.at(s.from, 0)) / width : 1
    this.hold(depth, force, tilted, time, this.between(share, 1), this.between(share, 2))
  }

  private at(point: f64, part: i32): f64 {
    return item(this.points, POINT_SIZE * whole(point) + part)
  }

  private between(share: f64, part: i32): f64 {
    const low: f64 = this.at(this.state.from, part)
    return low + share * (this.at(this.state.from + 1, part) - low)
  }

  private hold(depth: f64, force: f64, tilted: f64, time: f64, least: f64, most: f64): void {
    const s = this.state
    const low: f64 = least > 0 ? force / least : Infinity
    const high: f64 = force > 0 ? most / force : Infinity
    const closer: f64 = Math.min(low, high)
    if (closer < s.closest) {
      s.closest = closer
      s.where = depth
    }
    if (force < least && isNaN(s.below)) {
      s.below = depth
      s.belowTime = time
    }
    if (force > most && isNaN(s.above)) {
      s.above = depth
      s.aboveTime = time
    }
    if (force - tilted > most && isNaN(s.jammed)) s.jammed = depth
  }
}
