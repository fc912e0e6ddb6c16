/** Gathers what the headline figures are made from while a run goes on; `metrics` of the job makes them. */
import type { Arm } from '../axis/arm.ts'
import type { Axis } from '../axis/axis.ts'
import type { Load } from '../axis/load.ts'
import { Block } from '../core/block.ts'
import { item, type Numbers, numbers, put, whole } from '../core/native.ts'
import { STANDING, Sums } from '../job/sums.ts'

/** Half width of the band about the settled force. */
export const BAND: f64 = 0.05
/** Time over which the capacitors of a bus even its power out [s]; common practice, no source. */
export const BUS_TIME: f64 = 0.01
const HISTORY: f64 = 60000

export class Figures extends Block {
  /** The settled window [s], sample period [s]. */
  windowStart: f64 = 0
  windowEnd: f64 = 0
  period: f64 = 0
  /** Cycles a metre of a step motor's field in open loop; NaN: closed loop. */
  perCycle: f64 = NaN
  readonly sums: Sums = new Sums()
  /** Weight of a period in the evened power. */
  private weight: f64 = 1
  private stride: f64 = 1
  private history: Numbers = numbers(0)

  /** Makes room for a run of so many samples. */
  prepare(samples: f64): void {
    this.weight = this.period / (this.period + BUS_TIME)
    this.stride = Math.ceil(samples / HISTORY)
    this.history = numbers(whole(Math.ceil(samples / this.stride)) + 1)
  }

  /**
   * One sample of the current loop, after it, under `voltage` [V]; `target` is where the drive wants the output [m], unless it
   * `yields`.
   */
  sample(time: f64, axis: Axis, load: Load, arm: Arm, target: f64, yields: bool, voltage: f64): void {
    const s = this.sums
    const force: f64 = load.effort()
    const current: f64 = axis.current()
    this.keep(s.samples, force)
    s.samples += 1
    s.squares += current * current
    const size: f64 = Math.abs(current)
    if (size > s.peakCurrent) s.peakCurrent = size
    this.draw(voltage, current)
    if (axis.heat.state.winding > s.hottest) s.hottest = axis.heat.state.winding
    if (time >= this.windowStart && time < this.windowEnd) this.settle(force, axis, target)
    load.observe(time, arm, yields)
  }

  /** At the end of the run. */
  finish(load: Load): void {
    const s = this.sums
    const touched: f64 = load.touched()
    if (!isNaN(touched) && s.count > 0) s.gripTime = this.timeToBand(s.force, touched)
  }

  /** Power from the bus: voltage times mean current of the period, evened out. */
  private draw(voltage: f64, current: f64): void {
    const s = this.sums
    const drawn: f64 = 0.5 * voltage * (current + s.latest)
    s.power += this.weight * (drawn - s.power)
    s.latest = current
    if (s.power > s.peakPower) s.peakPower = s.power
  }

  private keep(sample: f64, force: f64): void {
    if (this.stride === 1) put(this.history, whole(sample), force)
    else this.thin(sample, force)
  }

  private thin(sample: f64, force: f64): void {
    const index: f64 = Math.floor(sample / this.stride)
    if (index * this.stride === sample) put(this.history, whole(index), force)
  }

  /** Running means (Welford, Technometrics 4, 1962), and changes of direction. */
  private settle(force: f64, axis: Axis, target: f64): void {
    const s = this.sums
    const speed: f64 = axis.state.motorSpeed
    s.lag = this.perCycle * (target - axis.state.motorTravel)
    s.count += 1
    const off: f64 = force - s.force
    s.force += off / s.count
    s.forceSquares += off * (force - s.force)
    const current: f64 = axis.current()
    s.current += (current - s.current) / s.count
    s.heating += current * current
    s.winding = axis.heat.state.winding
    s.housing = axis.heat.state.housing
    s.travel = axis.state.travel
    const direction: f64 = speed > STANDING ? 1 : speed < -STANDING ? -1 : 0
    if (direction === 0) return
    if (s.direction !== 0 && direction !== s.direction) s.reversals += 1
    s.direction = direction
  }

  /** From first touch until the force enters the band for the last time before the settled window ends; NaN: it does not. */
  private timeToBand(settled: f64, touched: f64): f64 {
    if (!(settled > 0)) return NaN
    const step: f64 = this.stride * this.period
    const last: f64 = Math.floor((this.sums.samples - 1) / this.stride)
    let index: f64 = Math.min(Math.floor(this.windowEnd / step), last)
    const from: f64 = Math.ceil(touched / step)
    while (index >= from && Math.abs(item(this.history, whole(index)) - settled) <= BAND * settled) index -= 1
    const entered: f64 = (index + 1) * step
    return entered < this.windowEnd ? Math.max(0, entered - touched) : NaN
  }
}
