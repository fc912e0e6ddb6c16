/** Gathers the headline figures of a run while it goes on. */

import { contactsOf } from '../plant/axis.ts'
import type { Plant } from '../plant/plant.ts'
import type { Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import type { Metrics } from './result.ts'
import { damageLimit } from './window.ts'

/** Length of the window in which the force counts as settled [s]. */
export const SETTLED = 0.05
export const BAND = 0.05
/** Speed below which the axis counts as standing [m/s]; common practice, no source. */
export const STANDING = 1e-4
const HISTORY = 60000

/** Running mean and mean square about it (Welford, Technometrics 4, 1962). */
class Mean {
  count = 0
  mean = 0
  private squares = 0

  add(value: number): void {
    this.count++
    const off = value - this.mean
    this.mean += off / this.count
    this.squares += off * (value - this.mean)
  }

  get value(): number | null {
    return this.count > 0 ? this.mean : null
  }

  get rms(): number | null {
    return this.count > 0 ? Math.sqrt(this.squares / this.count) : null
  }
}

export class Figures {
  private readonly windowStart: number
  private readonly windowEnd: number
  private readonly moves: { start: number; end: number }[]
  private readonly limit: number
  private readonly opening: number
  private readonly contacts: number
  private readonly stride: number
  private readonly period: number
  private readonly history: Float64Array
  private samples = 0
  private readonly force = new Mean()
  private readonly current = new Mean()
  private squares = 0
  private peakCurrent = 0
  /** Least mean force of the two contacts while the part hangs in them [N]; Infinity: it never does. */
  weakest = Number.POSITIVE_INFINITY
  private least = Number.POSITIVE_INFINITY
  private most = Number.NEGATIVE_INFINITY
  private required = 0
  private margin = Number.POSITIVE_INFINITY
  private reversals = 0
  private direction = 0
  private travel = Number.NaN
  private lag = Number.NaN
  private hottest = Number.NEGATIVE_INFINITY

  constructor(scenario: Scenario, samples: number) {
    const ends = [scenario.run.duration, ...scenario.arm.moves.map((move) => move.start)]
    if (scenario.events.powerLoss) ends.push(scenario.events.powerLoss.time)
    if (scenario.events.release) ends.push(scenario.events.release.time)
    if (scenario.arm.lift !== null || scenario.arm.moves.length > 0) ends.push(liftTime(scenario))
    this.windowEnd = Math.min(...ends)
    this.windowStart = Math.max(0, this.windowEnd - SETTLED)
    this.moves = scenario.arm.moves.map((move) => ({ start: move.start, end: move.start + move.duration }))
    this.limit = damageLimit(scenario)
    this.opening = scenario.jaws.opening
    this.contacts = contactsOf(scenario)
    this.period = 1 / scenario.drive.currentRate
    this.stride = Math.ceil(samples / HISTORY)
    this.history = new Float64Array(Math.ceil(samples / this.stride) + 1)
  }

  /**
   * One sample of the current loop: the plant after it, force needed at one contact [N], what friction can hold over what pulls
   * (Infinity while the part is supported), and the cycles by which an open loop's rotor lags its field (NaN in closed loop).
   */
  sample(time: number, plant: Plant, needed: number, holds: number, lag: number): void {
    const near = plant.nearForce
    const far = plant.farForce
    const force = 0.5 * (near + far)
    if (this.samples % this.stride === 0) this.history[this.samples / this.stride] = force
    this.samples++
    const { current } = plant.winding
    this.squares += current * current
    const size = Math.abs(current)
    if (size > this.peakCurrent) this.peakCurrent = size
    if (plant.heat.winding > this.hottest) this.hottest = plant.heat.winding
    if (time >= this.windowStart && time < this.windowEnd) this.settle(force, current, plant.v, plant.jawX, lag)
    if (needed > this.required) this.required = needed
    if (holds < this.margin) this.margin = holds
    if (force < this.weakest && plant.hanging && !plant.out) this.weakest = force
    if (this.inMove(time)) {
      this.least = Math.min(this.least, near, far)
      this.most = Math.max(this.most, near, far)
    }
  }

  metrics(plant: Plant): Metrics {
    const { contactTime, peak } = plant
    const touched = !Number.isNaN(contactTime)
    const settled = touched ? this.force.value : null
    const figure = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null)
    return {
      contactTime: figure(contactTime),
      contactSpeed: figure(plant.contactSpeed),
      gripTime: settled === null ? null : this.gripTime(settled, contactTime),
      peakForce: touched ? figure(peak) : null,
      peakForceTime: figure(plant.peakTime),
      settledForce: figure(settled),
      minForceInMove: figure(this.least),
      maxForceInMove: figure(this.most),
      requiredForce: this.required > 0 ? figure(this.required) : null,
      holdMargin: figure(this.margin - 1),
      slipDistance: touched ? figure(plant.slip.distance) : null,
      damageMargin: touched ? figure(this.limit / peak - 1) : null,
      settledCurrent: figure(this.current.value),
      peakCurrent: this.samples > 0 ? figure(this.peakCurrent) : null,
      rmsCurrent: figure(Math.sqrt(this.squares / this.samples)),
      windingTemperature: figure(this.hottest),
      forceRipple: touched ? figure(this.force.rms) : null,
      reversals: this.force.count > 0 ? this.reversals / (this.force.count * this.period) : null,
      seenWidth: figure(this.opening - this.contacts * plant.contactTravel),
      seenStiffness:
        settled && settled > 0 ? figure(settled / (this.contacts * (this.travel - plant.contactTravel))) : null,
      lostCycles: figure(Math.floor(this.lag + 0.5)),
      jawTravel: figure(this.travel),
    }
  }

  private settle(force: number, current: number, speed: number, travel: number, lag: number): void {
    this.lag = lag
    this.force.add(force)
    this.current.add(current)
    this.travel = travel
    const direction = speed > STANDING ? 1 : speed < -STANDING ? -1 : 0
    if (direction !== 0) {
      if (this.direction !== 0 && direction !== this.direction) this.reversals++
      this.direction = direction
    }
  }

  private inMove(time: number): boolean {
    for (const move of this.moves) if (time >= move.start && time <= move.end) return true
    return false
  }

  /** From first touch until the force enters the band for the last time before the settled window ends. */
  private gripTime(settled: number, contactTime: number): number | null {
    if (!(settled > 0)) return null
    const step = this.stride * this.period
    let index = Math.min(Math.floor(this.windowEnd / step), Math.floor((this.samples - 1) / this.stride))
    const from = Math.ceil(contactTime / step)
    while (index >= from && Math.abs(this.history[index]! - settled) <= BAND * settled) index--
    const time = (index + 1) * step - contactTime
    return (index + 1) * step < this.windowEnd ? Math.max(0, time) : null
  }
}
