/** What the axis shows at given instants: how a log sees it. Positions and current are those between samples, what the drive gives holds. */
import type { Axis } from '../axis/axis.ts'
import type { Load } from '../axis/load.ts'
import { Block, State } from '../core/block.ts'
import { item, type Numbers, numbers, put, whole } from '../core/native.ts'

/** Motor-side travel [m] and speed [m/s], output's travel and speed, current [A], effort [N]; then command [A] and voltage [V]. */
export const SAMPLED: i32 = 8
const SMOOTH: i32 = 6
/** An instant this share of a period past a sample is the sample's own. */
const ROUNDING: f64 = 1e-6

class SamplesState extends State {
  /** Instants taken so far. */
  taken: f64 = 0
  /** Time of the last sample [s]. */
  time: f64 = 0
}

export class Samples extends Block {
  /** Sample period of the current loop [s]. */
  period: f64 = 5e-5
  /** Instants [s], rising, and how many; a column behind the other. */
  count: f64 = 0
  instants: Numbers = numbers(0)
  columns: Numbers = numbers(0)
  before: Numbers = numbers(SAMPLED)
  now: Numbers = numbers(SAMPLED)
  readonly state: SamplesState = new SamplesState()

  /** The axis at `time` [s], before its next period, with what the drive gives from now on. */
  sample(time: f64, axis: Axis, load: Load, command: f64, voltage: f64): void {
    const s = this.state
    if (s.taken >= this.count) return
    const now = this.now
    for (let c: i32 = 0; c < SAMPLED; c++) put(this.before, c, item(now, c))
    put(now, 0, axis.state.motorTravel)
    put(now, 1, axis.state.motorSpeed)
    put(now, 2, axis.state.travel)
    put(now, 3, axis.state.speed)
    put(now, 4, axis.current())
    put(now, 5, load.effort())
    put(now, 6, command)
    put(now, 7, voltage)
    while (s.taken < this.count && item(this.instants, whole(s.taken)) <= time + ROUNDING * this.period) this.take(time)
    s.time = time
  }

  private take(time: f64): void {
    const row: i32 = whole(this.state.taken)
    const length: i32 = whole(this.count)
    const late: f64 = Math.max(0, (time - item(this.instants, row)) / this.period)
    const share: f64 = time === 0 || late <= ROUNDING ? 0 : Math.min(1, late)
    for (let c: i32 = 0; c < SMOOTH; c++)
      put(this.columns, c * length + row, item(this.now, c) - share * (item(this.now, c) - item(this.before, c)))
    for (let c: i32 = SMOOTH; c < SAMPLED; c++)
      put(this.columns, c * length + row, share > 0 ? item(this.before, c) : item(this.now, c))
    this.state.taken += 1
  }
}
