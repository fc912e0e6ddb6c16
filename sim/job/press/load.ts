/**
 * A bushing that the ram presses into a bore, as the axis feels it. Between ram and bushing lies what frame and ram give, a spring that
 * can only push; the bushing with its punch is a mass of its own, so that the joint can stick and slip; behind it the joint and, at its
 * depth, a shoulder. Depth counts from where the chamfer first touches the bore.
 */
import type { Arm } from '../../axis/arm.ts'
import type { Axis } from '../../axis/axis.ts'
import { EndStops } from '../../axis/endstops.ts'
import { Load } from '../../axis/load.ts'
import { strides } from '../../axis/strides.ts'
import { State } from '../../core/block.ts'
import { larger, type Numbers, put } from '../../core/native.ts'
import { Lately } from '../lately.ts'
import { STANDING } from '../sums.ts'
import { Band } from './band.ts'
import { Joint } from './joint.ts'

/** Channels of the record, in this order; `channels.ts` names them. */
const CHANNELS: i32 = 4

class PressState extends State {
  /** Travel of the ram, depth of the bushing [m], its speed [m/s]. */
  travel: f64 = 0
  depth: f64 = 0
  speed: f64 = 0
  /** Force of the ram, of the joint, of the shoulder [N]; highest of the ram in the period just past. */
  force: f64 = 0
  joint: f64 = 0
  shoulder: f64 = 0
  highest: f64 = 0
  /** Highest force so far [N] and when [s]; when it first exceeded the limit [s], at which depth [m]. */
  peak: f64 = 0
  peakTime: f64 = NaN
  over: f64 = NaN
  overDepth: f64 = NaN
  /** First touch [s], the ram's speed [m/s] and travel [m] there; NaN: not yet. */
  contactTime: f64 = NaN
  contactSpeed: f64 = NaN
  contactTravel: f64 = NaN
  /** When the bushing met the shoulder [s], and the highest force of the ram since [N]. */
  seatTime: f64 = NaN
  seatPeak: f64 = NaN
  /** When the bushing moved last [s]; NaN: never. */
  moved: f64 = NaN
  /** Most of the force that was by tilt [N]; work done on the bushing [J]. */
  tilted: f64 = 0
  work: f64 = 0
}

export class PressLoad extends Load {
  /** Travel of the ram to first touch [m]; give of frame and ram [N/m], [N·s/m]; mass of bushing and punch [kg]. */
  gap: f64 = 0
  stiffness: f64 = 1
  damping: f64 = 0
  mass: f64 = 1
  /** Highest force that may be [N], Infinity: any. */
  limit: f64 = Infinity
  /** Integration step [s]. */
  step: f64 = 0
  readonly joint: Joint = new Joint()
  /** The shoulder; and the mouth of the bore, before which a bushing that springs out of its cone stays. */
  readonly ends: EndStops = new EndStops()
  readonly band: Band = new Band()
  readonly lately: Lately = new Lately()
  readonly state: PressState = new PressState()

  fastest(outputMass: f64, _force: f64): f64 {
    const both: f64 = 1 / outputMass + 1 / this.mass
    const damper: f64 = Math.max(this.damping * both, this.ends.damping / this.mass)
    const springs: f64 = this.stiffness + this.joint.friction.stiffness + this.ends.stiffness
    return Math.max(damper, Math.max(Math.sqrt(this.stiffness * both), Math.sqrt(springs / this.mass)))
  }

  setStep(step: f64): void {
    this.step = step
    this.joint.friction.setStep(step)
  }

  pull(arm: Arm): f64 {
    return arm.state.along
  }

  begin(_time: f64, _arm: Arm, _opening: bool): void {
    this.state.highest = 0
  }

  stride(axis: Axis, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void {
    strides(axis, this, time, voltage, connected, pull, target)
  }

  press(travel: f64, speed: f64): f64 {
    const s = this.state
    const squeeze: f64 = travel - this.gap - s.depth
    const push: f64 = squeeze > 0 ? this.stiffness * squeeze + this.damping * (speed - s.speed) : 0
    s.force = push > 0 ? push : 0
    return s.force
  }

  follow(travel: f64, speed: f64, time: f64): void {
    const s = this.state
    s.travel = travel
    s.joint = this.joint.force(s.depth, s.speed)
    s.shoulder = this.ends.force(s.depth, s.speed)
    s.speed += (this.step / this.mass) * (s.force - s.joint + s.shoulder)
    const way: f64 = this.step * s.speed
    s.depth += way
    s.work += s.force * way
    s.highest = larger(s.highest, s.force)
    if (s.force > 0 && isNaN(s.contactTime)) {
      s.contactTime = time
      s.contactSpeed = speed
      s.contactTravel = travel
    }
    if (s.depth > this.ends.stroke || !isNaN(s.seatTime)) this.seat(time)
    else if (s.depth > this.band.state.deepest) this.deepen(time)
    if (s.force > s.peak) this.rise(time)
  }

  end(time: f64, _opening: bool): void {
    const s = this.state
    this.lately.note(time, s.travel, s.peak)
    if (Math.abs(s.speed) > STANDING) s.moved = time
  }

  effort(): f64 {
    return this.state.force
  }

  felt(): f64 {
    return this.state.force
  }

  most(): f64 {
    return this.state.highest
  }

  touched(): f64 {
    return this.state.contactTime
  }

  release(): void {}

  isLost(): bool {
    const band = this.band.state
    return !isNaN(this.state.over) || !isNaN(band.above) || !isNaN(band.below)
  }

  observe(_time: f64, _arm: Arm, _yields: bool): void {}

  channels(): i32 {
    return CHANNELS
  }

  show(now: Numbers, from: i32): void {
    const s = this.state
    put(now, from, s.highest)
    put(now, from + 1, s.depth)
    put(now, from + 2, s.joint)
    put(now, from + 3, s.shoulder < 0 ? -s.shoulder : 0)
  }

  settle(): void {
    // The limit may be lower by now than what it has borne.
    if (isNaN(this.state.over)) this.state.peak = Math.min(this.state.peak, this.limit)
    this.joint.engage(this.state.depth)
    this.joint.friction.settle()
    this.band.settle()
  }

  private deepen(time: f64): void {
    const s = this.state
    const tilted: f64 = this.joint.byTilt(s.depth)
    s.tilted = larger(s.tilted, tilted)
    this.band.check(s.depth, s.force, tilted, time)
  }

  private seat(time: f64): void {
    const s = this.state
    if (isNaN(s.seatTime)) {
      s.seatTime = time
      s.seatPeak = 0
    }
    s.seatPeak = larger(s.seatPeak, s.force)
  }

  private rise(time: f64): void {
    const s = this.state
    s.peak = s.force
    s.peakTime = time
    if (s.force > this.limit && isNaN(s.over)) {
      s.over = time
      s.overDepth = s.depth
    }
  }
}
