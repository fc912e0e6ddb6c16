/**
 * A web between the line and the roll that the axis drives. What lies between them in lengths of no pull goes by the law of mass
 * (Shelton 1986, from memory; own notation): with w the relaxed length in a span of length L, ε = L/w − 1 and ε₁ the strain with which it
 * comes, dw/dt = v₁/(1 + ε₁) − v₂/(1 + ε). For small strain that is L·dT/dt = E·A·(v₂ − v₁) + T₁·v₁ − T·v₂. `drawn` is L − w: below 0 the
 * web hangs slack by that length and carries nothing, at standstill it is a spring of E·A/L.
 *
 * Idlers drag behind the place where the tension is measured, so the roll pulls tension and drag; they cannot drag with more than the web
 * hands them. Drag is the bristle of the axis, so it sticks. A roll that winds grows by what it has wound, and its inertia with it; the
 * web brings its own momentum along, so J·dω/dt takes no ω·dJ/dt.
 */
import type { Arm } from '../../axis/arm.ts'
import type { Axis } from '../../axis/axis.ts'
import { Friction } from '../../axis/friction.ts'
import { Load } from '../../axis/load.ts'
import { strides } from '../../axis/strides.ts'
import { Line } from '../../control/line.ts'
import { State } from '../../core/block.ts'
import { sine } from '../../core/elementary.ts'
import { larger, type Numbers, put } from '../../core/native.ts'

/** Channels of the record, in this order; `channels.ts` names them. */
const CHANNELS: i32 = 6

class WebState extends State {
  /** How much longer than the web in it the span is [m], below 0 slack; relaxed length that the line hands out [m/s]. */
  drawn: f64 = 0
  fed: f64 = 0
  /** Tension at the gauge and drag of the idlers behind it [N]; highest of both together in the period just past. */
  tension: f64 = 0
  drag: f64 = 0
  highest: f64 = 0
  /** Radius of the roll, and at which the web meets it just now [m]; inertia of the output [kg·m²]; relaxed length taken up [m]. */
  radius: f64 = 0.1
  lever: f64 = 0.1
  inertia: f64 = 1
  wound: f64 = 0
  /** Speeds of line and of the roll's rim [m/s]. */
  lineSpeed: f64 = 0
  rimSpeed: f64 = 0
  /** First tension, and first as much as the least wanted [s]; NaN: not yet. */
  touched: f64 = NaN
  taut: f64 = NaN
  /** Highest tension so far [N] and when [s]; when it first exceeded the most wanted, and when the web tore [s]. */
  peak: f64 = 0
  peakTime: f64 = NaN
  over: f64 = NaN
  torn: f64 = NaN
  tornAt: f64 = NaN
  /** In the time that counts: least tension [N] and when [s], when it first lay below the least wanted [s], and the most [N]. */
  least: f64 = Infinity
  leastTime: f64 = NaN
  under: f64 = NaN
  most: f64 = 0
  mostTime: f64 = NaN
  /** There also, once a period: how often, mean tension [N] and squares about it, lengths of line and rim [m], highest torque [N·m]. */
  count: f64 = 0
  mean: f64 = 0
  squares: f64 = 0
  lineWay: f64 = 0
  rimWay: f64 = 0
  torque: f64 = 0
}

export class WebLoad extends Load {
  /** Length of the span [m], E·A [N], strain with which the web comes, time by which stretching leads the stretch [s]. */
  length: f64 = 1
  stiffness: f64 = 1
  entry: f64 = 0
  damping: f64 = 0
  /** Radius at the start, its square's growth for each metre wound [m]; inertia then [kg·m²], and for each m⁴ of radius on top. */
  radius: f64 = 0.1
  growth: f64 = 0
  inertia: f64 = 1
  perRadius: f64 = 0
  /** Out of round, of roll and line's roll [m]; radius of that [m]. */
  runout: f64 = 0
  lineRunout: f64 = 0
  lineRadius: f64 = 1
  /** Least and most tension wanted [N], from when on they count [s]; tension at which the web tears [N]. */
  leastWanted: f64 = 0
  mostWanted: f64 = Infinity
  from: f64 = 0
  tears: f64 = Infinity
  /** Most drag for each newton of tension. */
  traction: f64 = 1
  /** Integration step and period of the current loop [s]. */
  step: f64 = 0
  period: f64 = 0
  readonly line: Line = new Line()
  readonly idlers: Friction = new Friction()
  readonly state: WebState = new WebState()
  /** 1/length and 1/radius of the line's roll [1/m], and relaxed length of what comes; as `settle` leaves them. */
  private perLength: f64 = 1
  private perLineRadius: f64 = 1
  private unstrained: f64 = 1

  fastest(outputMass: f64, _force: f64): f64 {
    const square: f64 = (this.radius + this.runout) * (this.radius + this.runout)
    const spring: f64 = this.stiffness / this.length + this.idlers.stiffness
    const damper: f64 = (this.stiffness * this.damping) / this.length + this.idlers.viscous
    return Math.max(Math.sqrt((spring * square) / outputMass), (damper * square) / outputMass)
  }

  setStep(step: f64): void {
    this.step = step
    this.idlers.setStep(step)
  }

  pull(_arm: Arm): f64 {
    return 0
  }

  override carries(): f64 {
    return this.state.inertia
  }

  begin(_time: f64, _arm: Arm, _opening: bool): void {
    const s = this.state
    s.highest = 0
    if (this.growth > 0) this.grow()
  }

  stride(axis: Axis, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void {
    strides(axis, this, time, voltage, connected, pull, target)
  }

  press(travel: f64, speed: f64): f64 {
    const s = this.state
    s.lever = this.runout > 0 ? s.radius + this.runout * sine(travel) : s.radius
    s.rimSpeed = speed * s.lever
    s.tension = isNaN(s.torn) ? this.pulled(s.rimSpeed * this.relaxed() - s.fed) : 0
    s.drag = this.dragged(s.rimSpeed)
    return (s.tension + s.drag) * s.lever
  }

  follow(_travel: f64, speed: f64, time: f64): void {
    const s = this.state
    const rim: f64 = speed * s.lever * this.relaxed()
    s.fed = this.handed(time + 0.5 * this.step)
    s.drawn += this.step * (rim - s.fed)
    s.wound += this.step * rim
    const high: f64 = Math.max(s.tension, s.tension + s.drag)
    s.highest = larger(s.highest, high)
    if (s.tension > 0 && isNaN(s.touched)) s.touched = time
    if (s.tension > 0 && s.tension >= this.leastWanted && isNaN(s.taut)) s.taut = time
    if (high > s.peak) this.rise(high, time)
    if (time >= this.from) this.watch(Math.min(s.tension, s.tension + s.drag), high, time)
  }

  end(time: f64, _opening: bool): void {
    if (time < this.from) return
    const s = this.state
    s.count += 1
    const off: f64 = s.tension - s.mean
    s.mean += off / s.count
    s.squares += off * (s.tension - s.mean)
    s.lineWay += this.period * s.lineSpeed
    s.rimWay += this.period * s.rimSpeed
    s.torque = larger(s.torque, (s.tension + s.drag) * s.lever)
  }

  effort(): f64 {
    return this.state.tension
  }

  felt(): f64 {
    return this.state.tension
  }

  most(): f64 {
    return this.state.highest
  }

  touched(): f64 {
    return this.state.touched
  }

  release(): void {}

  isLost(): bool {
    const s = this.state
    return !isNaN(s.torn) || !isNaN(s.over) || !isNaN(s.under)
  }

  observe(_time: f64, _arm: Arm, _yields: bool): void {}

  channels(): i32 {
    return CHANNELS
  }

  show(now: Numbers, from: i32): void {
    const s = this.state
    put(now, from, s.tension)
    put(now, from + 1, s.tension + s.drag)
    put(now, from + 2, s.lineSpeed)
    put(now, from + 3, s.rimSpeed)
    put(now, from + 4, s.drawn < 0 ? -s.drawn : 0)
    put(now, from + 5, s.radius)
  }

  settle(): void {
    const s = this.state
    // What it bears by now may be less than it has borne.
    if (isNaN(s.torn)) s.peak = Math.min(s.peak, this.tears)
    if (isNaN(s.over)) s.peak = Math.min(s.peak, this.mostWanted)
    this.perLength = 1 / this.length
    this.perLineRadius = 1 / this.lineRadius
    this.unstrained = 1 / (1 + this.entry)
    this.idlers.settle()
    this.grow()
  }

  /** Share of a length in the span that it has without pull. */
  private relaxed(): f64 {
    return this.state.drawn > 0 ? 1 - this.state.drawn * this.perLength : 1
  }

  /** Tension [N] where the span's stretch grows by `rate` [m/s]. */
  private pulled(rate: f64): f64 {
    const drawn: f64 = this.state.drawn
    if (drawn <= 0) return 0
    const strain: f64 = drawn / (this.length - drawn) + this.damping * rate * this.perLength
    return strain > 0 ? this.stiffness * strain : 0
  }

  /** Drag of the idlers [N]; they slip under a web that does not hold them. */
  private dragged(speed: f64): f64 {
    if (this.idlers.coulomb === 0 && this.idlers.viscous === 0) return 0
    const most: f64 = this.traction * this.state.tension
    return Math.max(-most, Math.min(most, this.idlers.force(speed, 0)))
  }

  /** Relaxed length that the line hands out at a time [m/s]. */
  private handed(time: f64): f64 {
    const s = this.state
    this.line.at(time)
    const now = this.line.state
    s.lineSpeed = now.speed
    if (this.lineRunout > 0)
      s.lineSpeed *= 1 + this.lineRunout * this.perLineRadius * sine(now.way * this.perLineRadius)
    return s.lineSpeed * this.unstrained
  }

  private grow(): void {
    const s = this.state
    const start: f64 = this.radius * this.radius
    const square: f64 = start + this.growth * s.wound
    s.radius = this.growth > 0 ? Math.sqrt(square) : this.radius
    s.inertia = this.inertia + this.perRadius * (square * square - start * start)
  }

  private rise(high: f64, time: f64): void {
    const s = this.state
    s.peak = high
    s.peakTime = time
    if (high > this.mostWanted && isNaN(s.over)) s.over = time
    if (high > this.tears && isNaN(s.torn)) {
      s.torn = time
      s.tornAt = high
    }
  }

  private watch(low: f64, high: f64, time: f64): void {
    const s = this.state
    if (low < s.least) {
      s.least = low
      s.leastTime = time
      if (low < this.leastWanted && isNaN(s.under)) s.under = time
    }
    if (high > s.most) {
      s.most = high
      s.mostTime = time
    }
  }
}
