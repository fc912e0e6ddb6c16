import { PositionPid } from '../control/position-pid.ts'
import { State } from '../core/block.ts'
import { item, type Numbers, numbers, whole } from '../core/native.ts'
import { Machine } from './machine.ts'

class ReplayState extends State {
  /** Samples of the servo so far. */
  count: f64 = 0
}

/** Gives the axis what a log has: a way for the position loop of the servo to follow, or the currents themselves. */
export class Replay extends Machine {
  /** The currents are given, not the way. */
  commanded: f64 = 0
  /** A value for each sample of the servo, and how many: way [m], its speed [m/s] and acceleration [m/s²]; currents [A]. */
  length: f64 = 0
  way: Numbers = numbers(0)
  speeds: Numbers = numbers(0)
  accelerations: Numbers = numbers(0)
  currents: Numbers = numbers(0)
  /** The loop takes over without a bump from this current [A]. */
  starts: f64 = 0
  first: f64 = 0
  readonly loop: PositionPid = new PositionPid()
  readonly replay: ReplayState = new ReplayState()

  begin(_travel: f64, _time: f64): void {
    this.loop.reset()
    if (this.starts > 0) this.loop.preset(this.first)
    this.replay.count = 0
    if (this.commanded === 0 && this.length > 0) this.state.target = item(this.way, 0)
  }

  tick(_time: f64, position: f64, _force: f64): f64 {
    const n: i32 = whole(Math.min(this.replay.count, this.length - 1))
    this.replay.count += 1
    if (this.commanded > 0) {
      this.loop.slope.tick(position)
      return item(this.currents, n)
    }
    this.state.target = item(this.way, n)
    this.state.wantedSpeed = item(this.speeds, n)
    return this.loop.tick(this.state.target, this.state.wantedSpeed, item(this.accelerations, n), position)
  }

  saturated(): f64 {
    return this.commanded > 0 ? 0 : this.loop.state.saturated
  }

  measuredSpeed(): f64 {
    return this.loop.measuredSpeed()
  }

  settle(): void {}
}
