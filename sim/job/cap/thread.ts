/**
 * A closure on its thread, with the liner that it presses: torque against angle. Axial load and torque of the thread are those of a power
 * screw with a collar (Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., eq. 8-1 to 8-6), here as the lossless
 * load·lead/2π with friction on top that has a level of its own in either direction; what carries friction is the bristle of the axis
 * (`axis/friction.ts`), so that a closure at rest holds its angle. The liner is a spring of which a share creeps away, a Maxwell branch beside
 * a spring (standard linear solid), stepped implicitly. A jam on the wrong turn loads the thread alone; a thread that has stripped keeps a
 * share of its load and gives way to every turn on.
 */
import { Friction } from '../../axis/friction.ts'
import { Block, State } from '../../core/block.ts'

class ThreadState extends State {
  /** Squeeze of the liner [m], its creeping part and all of its force [N]; axial load of the jam [N]. */
  squeeze: f64 = 0
  creeping: f64 = 0
  preload: f64 = 0
  jam: f64 = 0
  /** It has stripped, and by how much liner and jam have given way for that [rad]. */
  stripped: f64 = 0
  overrun: f64 = 0
  overrunJam: f64 = 0
}

export class Thread extends Block {
  /** Angles at which the thread begins, the liner is met, and it jams [rad]; Infinity: nowhere. */
  start: f64 = 0
  seat: f64 = 0
  jams: f64 = Infinity
  /** Way down for each radian [m/rad], which is also the torque for each newton without friction; axial load of the jam for each radian [N/rad]. */
  climb: f64 = 0
  jamRate: f64 = 0
  /** Friction for each newton: in the thread turned against its load and with it, and of the liner [N·m/N]; of the free thread [N·m]. */
  against: f64 = 0
  along: f64 = 0
  face: f64 = 0
  runDown: f64 = 0
  /** Friction at rest beyond that of turning, as a share of it. */
  rest: f64 = 0
  /** Of the liner: stiffness [N/m], share that creeps, its time constant [s], and what a step leaves of it. */
  stiffness: f64 = 0
  relaxing: f64 = 0
  relaxationTime: f64 = Infinity
  keeps: f64 = 1
  /** Torque at which it strips [N·m], Infinity: never; share of the load that is left. */
  strip: f64 = Infinity
  stripShare: f64 = 0
  readonly friction: Friction = new Friction()
  readonly state: ThreadState = new ThreadState()

  setStep(step: f64): void {
    this.friction.setStep(step)
    this.keeps = 1 / (1 + step / this.relaxationTime)
  }

  /** Torque for each radian on the liner, turning on [N·m/rad]. */
  rate(): f64 {
    return (this.climb + this.against + this.face) * this.stiffness * this.climb
  }

  /** Fastest rate [rad/s] of a closure of so much inertia [kg·m²]. */
  fastest(inertia: f64): f64 {
    const jam: f64 = (this.climb + this.against) * this.jamRate
    return Math.sqrt((this.friction.stiffness + this.rate() + jam) / inertia)
  }

  /** Torque against the closure [N·m] at its angle [rad] and speed [rad/s], pressed down with `top` [N]; called once a step. */
  torque(angle: f64, speed: f64, top: f64): f64 {
    if (angle < this.start) return this.free(speed, top)
    return this.engage(top) + this.friction.force(speed, 0)
  }

  /** Before the thread nothing resists; it takes hold of a closure that slides, with no bristle to be bent at speed first. */
  private free(speed: f64, top: f64): f64 {
    this.friction.state.bristle = speed > 0 ? (this.runDown + this.along * top) / this.friction.stiffness : 0
    return 0
  }

  /** Puts the levels of friction to those of the present load; returns the torque without friction [N·m]. */
  engage(top: f64): f64 {
    const s = this.state
    const friction = this.friction
    const load: f64 = s.preload + s.jam - top
    const size: f64 = Math.abs(load)
    const always: f64 = this.runDown + this.face * s.preload
    const on: f64 = always + (load > 0 ? this.against : this.along) * size
    const off: f64 = always + (load > 0 ? this.along : this.against) * size
    friction.coulomb = on
    friction.coulombBack = off
    friction.rise = this.rest * Math.min(on, off)
    this.hold(on + friction.rise, off + friction.rise)
    return this.climb * load
  }

  /** A load that has gone takes its friction along: no bristle stands further than it can be bent. */
  private hold(on: f64, off: f64): void {
    const friction = this.friction
    const held: f64 = friction.stiffness * friction.state.bristle
    if (held > on) friction.state.bristle = on / friction.stiffness
    else if (held < -off) friction.state.bristle = -off / friction.stiffness
  }

  /** The closure has turned by `move` to an angle [rad]: liner and jam follow. */
  turn(angle: f64, move: f64): void {
    const s = this.state
    if (s.stripped > 0 && move > 0) {
      if (s.squeeze > 0) s.overrun += move
      if (s.jam > 0) s.overrunJam += move
    }
    s.jam = this.jamRate * Math.max(0, angle - this.jams - s.overrunJam)
    const squeeze: f64 = this.climb * Math.max(0, angle - this.seat - s.overrun)
    if (squeeze === 0 && s.squeeze === 0) return
    s.creeping = (s.creeping + this.relaxing * this.stiffness * (squeeze - s.squeeze)) * this.keeps
    s.squeeze = squeeze
    if (squeeze === 0) s.creeping = 0
    s.preload = Math.max(0, (1 - this.relaxing) * this.stiffness * squeeze + s.creeping)
  }

  /** The thread rides over at an angle [rad]. */
  giveWay(angle: f64): void {
    const s = this.state
    const gone: f64 = 1 - this.stripShare
    s.stripped = 1
    s.overrun += gone * Math.max(0, angle - this.seat - s.overrun)
    if (s.jam > 0) s.overrunJam += gone * (angle - this.jams - s.overrunJam)
    s.squeeze *= this.stripShare
    s.creeping *= this.stripShare
    s.preload *= this.stripShare
    s.jam *= this.stripShare
  }
}
