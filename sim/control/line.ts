/** The way of a line that others follow: ramps of limited jerk from one speed to the next, in closed form. */
import { Block, State } from '../core/block.ts'
import { item, type Numbers, numbers, whole } from '../core/native.ts'

/** Start [s], length so far [m], speed [m/s], acceleration [m/s²] and jerk [m/s³] of a phase. */
export const LINE_PHASE: i32 = 5

const SIXTH: f64 = 1 / 6

class LineState extends State {
  /** The phase in which the last question lay. */
  index: f64 = 0
  /** Length gone by so far [m], speed [m/s] and acceleration [m/s²] there. */
  way: f64 = 0
  speed: f64 = 0
  acceleration: f64 = 0
}

export class Line extends Block {
  /** Phases one after the other, the first from time 0; the last one goes on for ever. */
  phases: Numbers = numbers(0)
  count: f64 = 0
  readonly state: LineState = new LineState()

  /** Sets length, speed and acceleration to those at `time` [s]; costs least where time only grows. */
  at(time: f64): void {
    const s = this.state
    if (this.count === 0) return
    const from: i32 = LINE_PHASE * this.seek(time)
    const speed: f64 = item(this.phases, from + 2)
    const acceleration: f64 = item(this.phases, from + 3)
    const jerk: f64 = item(this.phases, from + 4)
    const t: f64 = time - item(this.phases, from)
    s.way = item(this.phases, from + 1) + t * (speed + t * (0.5 * acceleration + t * jerk * SIXTH))
    s.speed = speed + t * (acceleration + 0.5 * t * jerk)
    s.acceleration = acceleration + t * jerk
  }

  private seek(time: f64): i32 {
    const last: i32 = whole(this.count) - 1
    let n: i32 = whole(Math.min(this.state.index, this.count - 1))
    while (n > 0 && time < item(this.phases, LINE_PHASE * n)) n--
    while (n < last && time >= item(this.phases, LINE_PHASE * (n + 1))) n++
    this.state.index = n
    return n
  }
}
