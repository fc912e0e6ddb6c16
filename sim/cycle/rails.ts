/** Tells when a run has left its rails: numbers no longer finite, an output far outside, or a loop that bangs between its limits. */
import { Block, State } from '../core/block.ts'
import { item, type Numbers, numbers, put, whole } from '../core/native.ts'

/** So many changes from one limit to the other within the window mean a loop that does not settle; common practice, no source. */
export const FLIPS: i32 = 8
export const WINDOW: f64 = 0.1

/** How a run may leave its rails, in the words of `result.cause`; the state holds the place in this list. */
export const IN_ORDER: f64 = 0
export const NUMBERS: f64 = 1
export const TRAVEL: f64 = 2
export const POSITION_LOOP: f64 = 3
export const CURRENT_LOOP: f64 = 4

class BangingState extends State {
  side: f64 = 0
  /** Changes seen so far. */
  count: f64 = 0
}

/** The times of the last changes from one limit to the other. */
class Banging extends Block {
  readonly state: BangingState = new BangingState()
  readonly times: Numbers = numbers(FLIPS + 1)

  /** `saturated` −1, 0 or 1. Returns the time at which the banging began, or NaN. */
  see(saturated: f64, time: f64): f64 {
    const s = this.state
    if (saturated === 0 || saturated === s.side) return NaN
    s.side = saturated
    const count: i32 = whole(s.count)
    put(this.times, count % (FLIPS + 1), time)
    s.count = s.count + 1
    if (count < FLIPS) return NaN
    const first: f64 = item(this.times, (count + 1) % (FLIPS + 1))
    return time - first < WINDOW ? first : NaN
  }
}

class RailsState extends State {
  /** When the run left its rails [s], and how; NaN while it has not. */
  left: f64 = NaN
  cause: f64 = IN_ORDER
}

export class Rails extends Block {
  /** Farthest that the output may get [m]. */
  reach: f64 = Infinity
  readonly servo: Banging = new Banging()
  readonly bridge: Banging = new Banging()
  readonly state: RailsState = new RailsState()

  /** Numbers that are none, or an output far outside; true when the run must end. */
  outside(time: f64, travel: f64, current: f64): bool {
    // One of the numbers that are none is within nothing.
    if (Math.abs(travel) < this.reach && Math.abs(current) < Infinity) return false
    if (!isFinite(travel) || !isFinite(current)) return this.leave(time, NUMBERS)
    return Math.abs(travel) > this.reach && this.leave(time, TRAVEL)
  }

  /** A loop that bangs; true when the run must end. */
  bangs(time: f64, servo: f64, bridge: f64): bool {
    if (servo !== this.servo.state.side && this.bang(this.servo.see(servo, time), POSITION_LOOP)) return true
    return bridge !== this.bridge.state.side && this.bang(this.bridge.see(bridge, time), CURRENT_LOOP)
  }

  private bang(time: f64, cause: f64): bool {
    return !isNaN(time) && this.leave(time, cause)
  }

  private leave(time: f64, cause: f64): bool {
    this.state.left = time
    this.state.cause = cause
    return true
  }
}
