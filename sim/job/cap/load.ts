/**
 * A closure that a head turns onto its thread, as the axis feels it. Between chuck and closure lies what the chuck gives, a spring both
 * ways for as long as it holds on; the closure is an inertia of its own; behind it the thread with its liner. Angles count from where the
 * head sets out. What a torque meter under the jar would show is the torque of the thread.
 */
import type { Arm } from '../../axis/arm.ts'
import type { Axis } from '../../axis/axis.ts'
import { Load } from '../../axis/load.ts'
import { strides } from '../../axis/strides.ts'
import { State } from '../../core/block.ts'
import { larger, type Numbers, put } from '../../core/native.ts'
import { Lately } from '../lately.ts'
import { SETTLED } from '../sums.ts'
import { Thread } from './thread.ts'

/** Channels of the record, in this order; `channels.ts` names them. */
const CHANNELS: i32 = 4

/**
 * A closure turns on where, within a settled window, it gets so much further than ever before [rad]: 40 µm on a radius of 20 mm; common
 * practice, no source. What noise of a gauge lets it creep is slower.
 */
const FURTHER: f64 = 0.002

class CapState extends State {
  /** Angle of the head [rad]. */
  head: f64 = 0
  /** Angle [rad] and speed [rad/s] of the closure; torque of the chuck and of the thread [N·m], highest of the chuck in the period just past. */
  angle: f64 = 0
  speed: f64 = 0
  torque: f64 = 0
  thread: f64 = 0
  highest: f64 = 0
  /** The chuck holds on. */
  held: f64 = 1
  /** Highest torque of the chuck so far [N·m] and when [s]; of the thread. */
  peak: f64 = 0
  peakTime: f64 = NaN
  applied: f64 = 0
  /** When the threads found each other, when liner or jam was first met [s], speed [rad/s] and angle [rad] there; NaN: not yet. */
  startTime: f64 = NaN
  contactTime: f64 = NaN
  contactSpeed: f64 = NaN
  contactAngle: f64 = NaN
  /** When it jammed, stripped, went over its most torque [s], and the angle on the thread where it stripped [rad]. */
  jamTime: f64 = NaN
  stripTime: f64 = NaN
  stripTurns: f64 = NaN
  over: f64 = NaN
  /** When the torque reached its least [s], and the angle on the thread there [rad]. */
  reached: f64 = NaN
  reachedTurns: f64 = NaN
  /** When the closure last turned on [s], NaN: never; from where and when on it is told [rad], [s]. */
  moved: f64 = NaN
  furthest: f64 = 0
  since: f64 = 0
  /** Work of the chuck [J], fastest turn on the thread [rad/s]. */
  work: f64 = 0
  fastest: f64 = 0
}

export class CapLoad extends Load {
  /** Give of the chuck [N·m/rad], [N·m·s/rad]; inertia of the closure [kg·m²]. */
  stiffness: f64 = 1
  damping: f64 = 0
  inertia: f64 = 1
  /** Top load at the start [N], and what is lost of it for each metre down [N/m]. */
  topLoad: f64 = 0
  topRate: f64 = 0
  /** Least and most application torque [N·m], and least turns on the thread until it is reached [rad]. */
  least: f64 = 0
  mostTorque: f64 = Infinity
  leastTurns: f64 = 0
  /** Integration step [s]. */
  step: f64 = 0
  readonly thread: Thread = new Thread()
  readonly lately: Lately = new Lately()
  readonly state: CapState = new CapState()

  fastest(outputMass: f64, _force: f64): f64 {
    const both: f64 = 1 / outputMass + 1 / this.inertia
    const spring: f64 = Math.sqrt(this.stiffness * both)
    const held: f64 = Math.sqrt(this.stiffness / this.inertia)
    return Math.max(Math.max(this.damping * both, spring), held + this.thread.fastest(this.inertia))
  }

  setStep(step: f64): void {
    this.step = step
    this.thread.setStep(step)
  }

  pull(_arm: Arm): f64 {
    return 0
  }

  begin(_time: f64, _arm: Arm, _opening: bool): void {
    this.state.highest = 0
  }

  stride(axis: Axis, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void {
    strides(axis, this, time, voltage, connected, pull, target)
  }

  press(travel: f64, speed: f64): f64 {
    const s = this.state
    s.torque = s.held > 0 ? this.stiffness * (travel - s.angle) + this.damping * (speed - s.speed) : 0
    return s.torque
  }

  follow(travel: f64, _speed: f64, time: f64): void {
    const s = this.state
    s.head = travel
    const thread = this.thread
    s.thread = thread.torque(s.angle, s.speed, this.top())
    s.speed += (this.step / this.inertia) * (s.torque - s.thread)
    const way: f64 = this.step * s.speed
    s.angle += way
    s.work += s.torque * way
    s.highest = larger(s.highest, s.torque)
    if (s.torque > s.peak) {
      s.peak = s.torque
      s.peakTime = time
    }
    if (s.angle < thread.start) return
    thread.turn(s.angle, way)
    this.notice(time)
  }

  /** What happens on the thread. */
  private notice(time: f64): void {
    const s = this.state
    const thread = this.thread
    if (isNaN(s.startTime)) s.startTime = time
    s.fastest = larger(s.fastest, s.speed)
    if (isNaN(s.contactTime) && thread.state.preload + thread.state.jam > 0) this.meet(time)
    if (isNaN(s.jamTime) && thread.state.jam > 0) s.jamTime = time
    if (s.thread <= s.applied) return
    s.applied = s.thread
    const turns: f64 = s.angle - thread.start
    if (isNaN(s.reached) && s.thread >= this.least) {
      s.reached = time
      s.reachedTurns = turns
    }
    if (isNaN(s.over) && s.thread > this.mostTorque) s.over = time
    if (isNaN(s.stripTime) && s.thread > thread.strip) {
      s.stripTime = time
      s.stripTurns = turns
      thread.giveWay(s.angle)
    }
  }

  private meet(time: f64): void {
    const s = this.state
    s.contactTime = time
    s.contactSpeed = s.speed
    s.contactAngle = s.angle
  }

  /** Force with which the head presses the closure down [N]. */
  private top(): f64 {
    const s = this.state
    if (s.held === 0) return 0
    return Math.max(0, this.topLoad - this.topRate * this.thread.climb * Math.max(0, s.angle - this.thread.start))
  }

  end(time: f64, _opening: bool): void {
    const s = this.state
    this.lately.note(time, s.head, s.applied)
    const further: bool = s.angle >= s.furthest + FURTHER
    if (further) s.moved = time
    if (!further && time - s.since < SETTLED) return
    s.furthest = larger(s.furthest, s.angle)
    s.since = time
  }

  effort(): f64 {
    return this.state.torque
  }

  felt(): f64 {
    return this.state.torque
  }

  most(): f64 {
    return this.state.highest
  }

  touched(): f64 {
    return this.state.contactTime
  }

  /** The chuck opens: the closure stays as it is. */
  release(): void {
    this.state.held = 0
  }

  isLost(): bool {
    const s = this.state
    return !isNaN(s.stripTime) || !isNaN(s.jamTime) || !isNaN(s.over) || s.reachedTurns < this.leastTurns
  }

  observe(_time: f64, _arm: Arm, _yields: bool): void {}

  channels(): i32 {
    return CHANNELS
  }

  show(now: Numbers, from: i32): void {
    const s = this.state
    put(now, from, s.highest)
    put(now, from + 1, s.thread)
    put(now, from + 2, s.angle)
    put(now, from + 3, this.thread.state.preload)
  }

  settle(): void {
    const s = this.state
    // What the thread bears by now may be less than it has borne.
    if (isNaN(s.stripTime)) s.applied = Math.min(s.applied, this.thread.strip)
    if (isNaN(s.over)) s.applied = Math.min(s.applied, this.mostTorque)
    this.thread.engage(this.top())
    this.thread.friction.settle()
  }
}
