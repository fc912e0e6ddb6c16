/** A part between two jaws, as the axis feels it: both contacts, the part's motion, its support, and what becomes of it. */
import type { Arm } from '../../axis/arm.ts'
import type { Axis } from '../../axis/axis.ts'
import { Load } from '../../axis/load.ts'
import { strides } from '../../axis/strides.ts'
import { leastOf } from '../../core/least.ts'
import { larger, type Numbers, put } from '../../core/native.ts'
import { Side } from './contact/side.ts'
import { heldStiffly, heldYielding, holdingForce, loadFactor, pullOnPads } from './holding.ts'
import { Slip } from './slip.ts'
import { GripState, GripSums } from './state.ts'

/** Channels of the record, in this order; `channels.ts` names them. */
const CHANNELS: i32 = 7

export class GripLoad extends Load {
  /** Both jaws are driven; travel of a jaw to first touch [m]; [kg]. */
  mirrored: f64 = 1
  gap: f64 = 0
  /** Further travel at which the jaws would meet [m]. */
  depth: f64 = Infinity
  partMass: f64 = 1
  /** What the arm's motion along the grip drives back where the axis yields: driven jaw and what moves with it in a straight line. */
  backMass: f64 = 0
  /** [N], Infinity: none; force above which a part counts as marked or dented [N]; pad length [m]. */
  crackForce: f64 = Infinity
  markForce: f64 = Infinity
  dentForce: f64 = Infinity
  padLength: f64 = 1
  /** Coefficients fall with load: m and N₀ [N]. */
  loadExponent: f64 = 1
  referenceForce: f64 = 1
  /** When the support goes [s], and the integration step [s]. */
  liftTime: f64 = Infinity
  step: f64 = 0
  readonly near: Side = new Side()
  readonly far: Side = new Side()
  readonly slip: Slip = new Slip()
  readonly state: GripState = new GripState()
  readonly sums: GripSums = new GripSums()
  /** What `weigh` has weighed last, and the load across and the force needed at one contact that it found [N]. */
  private down: f64 = NaN
  private side: f64 = NaN
  private along: f64 = NaN
  private yields: f64 = 0
  private across: f64 = 0
  private asks: f64 = 0

  fastest(outputMass: f64, force: f64): f64 {
    const side: f64 = this.near.tangent(Math.min(force, this.crackForce))
    const contacts: f64 = this.mirrored > 0 ? 2 : 1
    const part: f64 = Math.max(
      Math.sqrt((2 * side) / this.partMass),
      Math.sqrt(contacts * side * (1 / outputMass + 1 / this.partMass)),
    )
    return Math.max(part, this.slip.fastest())
  }

  setStep(step: f64): void {
    this.step = step
    this.near.setStep(step)
    this.far.setStep(step)
    this.slip.setStep(step)
  }

  pull(arm: Arm): f64 {
    return this.mirrored > 0 ? 0 : arm.state.along
  }

  begin(time: f64, arm: Arm, opening: bool): void {
    const s = this.state
    const pulls = arm.state
    if (s.hanging === 0 && s.out === 0 && !opening && time >= this.liftTime) this.lift(time, arm)
    s.along = s.hanging > 0 ? pulls.along : 0
    s.down = pulls.down
    s.side = pulls.side
    s.gripped = s.hanging > 0 ? loadFactor(this.loadExponent, this.referenceForce, 0.5 * (s.nearForce + s.farForce)) : 1
    s.nearMost = 0
    s.farMost = 0
  }

  stride(axis: Axis, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void {
    strides(axis, this, time, voltage, connected, pull, target)
  }

  press(travel: f64, speed: f64): f64 {
    const s = this.state
    if (s.out === 0) {
      const closed: f64 = travel - this.gap
      s.nearForce = this.near.step(closed - s.shift, speed - s.shiftSpeed)
      s.farForce =
        this.mirrored > 0 ? this.far.step(closed + s.shift, speed + s.shiftSpeed) : this.far.step(s.shift, s.shiftSpeed)
    }
    return this.mirrored > 0 ? s.nearForce + s.farForce : s.nearForce
  }

  follow(travel: f64, speed: f64, time: f64): void {
    const s = this.state
    const near: f64 = s.nearForce
    const far: f64 = s.farForce
    if (s.out === 0) {
      const shiftSpeed: f64 = s.shiftSpeed + this.step * ((near - far) * this.slip.perMass + s.along)
      s.shiftSpeed = shiftSpeed
      s.shift += this.step * shiftSpeed
      if (s.hanging > 0) this.slip.move(s.gripped * (near + far), s.down, s.side)
    }
    if (travel - this.gap > this.depth && s.out === 0 && isNaN(s.crackTime)) this.meet(time)
    s.nearMost = larger(s.nearMost, near)
    s.farMost = larger(s.farMost, far)
    const force: f64 = larger(far, near)
    if (force > s.peak) this.rise(force, travel, speed, time)
  }

  end(time: f64, opening: bool): void {
    const s = this.state
    s.normal = s.nearForce + s.farForce
    if (s.hanging > 0) {
      this.slip.calm()
      if (this.slip.hasSlid() && isNaN(s.slip)) s.slip = time
      if (s.out === 0 && (s.nearForce === 0 || s.farForce === 0) && isNaN(s.loose)) s.loose = time
      if (s.out === 0 && this.slip.state.distance > this.padLength) {
        s.drop = time
        this.lose()
      }
    }
    if (s.out > 0 && isNaN(s.lost)) s.lost = time
    if (opening && isNaN(s.free) && s.nearForce + s.farForce === 0) s.free = time
    if (s.nearMost > this.markForce) s.nearMarked = 1
    if (s.farMost > this.markForce) s.farMarked = 1
    if (isNaN(s.crackSeen) && !isNaN(s.crackTime)) {
      s.crackSeen = time
      s.crackFar = s.farMost > s.nearMost ? 1 : 0
    }
  }

  effort(): f64 {
    return 0.5 * (this.state.nearForce + this.state.farForce)
  }

  most(): f64 {
    return Math.max(this.state.nearMost, this.state.farMost)
  }

  felt(): f64 {
    return this.state.nearForce
  }

  touched(): f64 {
    return this.state.contactTime
  }

  release(): void {
    this.state.parted = this.borne()
    this.state.hanging = 0
  }

  isLost(): bool {
    const s = this.state
    const mark: f64 = Math.min(this.markForce, this.dentForce)
    const lost: bool = s.out > 0 || !isNaN(s.slip) || !isNaN(s.loose)
    return lost || s.peak > mark || !isNaN(s.crackTime)
  }

  observe(time: f64, arm: Arm, yields: bool): void {
    const s = this.state
    const sums = this.sums
    const held: bool = s.out === 0
    if (s.hanging > 0) {
      this.weigh(arm, yields ? 1 : 0)
      if (held || s.drop === time) this.compare()
      if (held && this.effort() < sums.weakest) sums.weakest = this.effort()
    }
    if (arm.state.moving > 0) {
      sums.least = Math.min(sums.least, Math.min(s.nearForce, s.farForce))
      sums.most = Math.max(sums.most, Math.max(s.nearForce, s.farForce))
    }
  }

  channels(): i32 {
    return CHANNELS
  }

  show(now: Numbers, from: i32): void {
    const s = this.state
    put(now, from, s.nearMost)
    put(now, from + 1, s.farMost)
    put(now, from + 2, s.shift)
    put(now, from + 3, this.slip.state.sag)
    put(now, from + 4, this.slip.state.drift)
    put(now, from + 5, this.slip.state.turn)
    put(now, from + 6, 0.5 * (this.near.state.dent + this.far.state.dent)) // each side counts the flattening of the whole part
  }

  settle(): void {
    const s = this.state
    const broken: bool = !isNaN(s.crackTime)
    if (!broken) s.peak = Math.min(s.peak, this.crackForce)
    this.down = NaN
    this.near.settle(broken)
    this.far.settle(broken)
  }

  /** The support under the part goes: it hangs, or, with nothing gripping it, stays behind. */
  lift(time: f64, arm: Arm): void {
    const s = this.state
    s.hanging = s.nearForce + s.farForce > 0 ? 1 : 0
    s.out = s.hanging > 0 ? 0 : 1
    if (s.hanging === 0) return
    const normal: f64 = s.nearForce + s.farForce
    const factor: f64 = loadFactor(this.loadExponent, this.referenceForce, 0.5 * normal)
    this.slip.hang(factor * normal, arm.state.down, arm.state.side)
    s.lift = time
  }

  /**
   * Hold margin: of a part that stuck, by what its pads carried, swings included; of one that slid, by what pulled, or what it broke away
   * at where that was less. In the end what pulls has to be borne, be the part ever so slow to feel it.
   */
  margin(): f64 {
    const sums = this.sums
    const grip: f64 = this.slip.hasSlid() ? Math.min(this.slip.state.least, sums.across) : sums.stuck
    return Math.min(Math.min(grip, sums.closed), Math.min(this.state.parted, this.borne())) - 1
  }

  /**
   * What both contacts can hold now over what pulls on the part now, along and across; Infinity: nothing does, or it does not hang. An
   * axis that yields holds no longer than its momentum lasts where no force so far was as great as the one needed.
   */
  private borne(): f64 {
    const s = this.state
    if (s.hanging === 0 || s.out > 0) return Infinity
    const along: f64 = this.partMass * Math.abs(s.along)
    const closed: f64 = along > 0 ? s.normal / along : Infinity
    const carried: f64 = this.slip.staticFriction * s.gripped * s.normal
    const held: f64 = s.peak < this.asks ? Math.min(closed, s.peak / this.asks) : closed
    return this.across > 0 ? Math.min(held, carried / this.across) : held
  }

  /** What pulls across the grip and what it takes to hold that, anew where anything in it has changed. */
  private weigh(arm: Arm, yields: f64): void {
    const s = this.state
    const along: f64 = arm.state.along
    if (s.down === this.down && s.side === this.side && along === this.along && yields === this.yields) return
    this.down = s.down
    this.side = s.side
    this.along = along
    this.yields = yields
    const slip = this.slip
    this.across = this.partMass * pullOnPads(s.down, s.side, slip.below, slip.beside, slip.radius)
    this.asks = this.needed(this.across, arm, yields > 0)
    this.sums.required = Math.max(this.sums.required, this.asks)
  }

  /** Force needed at one contact [N] under a load across [N] and what the arm does along: friction of two contacts, none of them lost. */
  private needed(across: f64, arm: Arm, yields: bool): f64 {
    const along: f64 = arm.state.along
    const held: f64 = holdingForce(this.slip.staticFriction, this.loadExponent, this.referenceForce, across)
    if (yields && this.backMass > 0) return heldYielding(held, this.partMass, this.backMass, along, arm.gravityAlong)
    return heldStiffly(held, this.partMass, along)
  }

  /** What holds beside what works against it, at the end of a period. */
  private compare(): void {
    const s = this.state
    const sums = this.sums
    const push: f64 = Math.abs(s.farForce - s.nearForce)
    if (s.normal === 0) sums.closed = 0
    else if (push > 0) sums.closed = leastOf(sums.closed, s.normal, push)
    if (!this.slip.hasSlid()) sums.stuck = this.slip.spare(sums.stuck)
    if (this.across > 0)
      sums.across = leastOf(sums.across, this.slip.staticFriction * s.gripped * s.normal, this.across)
  }

  /** The jaws have gone through the whole part. */
  private meet(time: f64): void {
    this.state.met = time
    this.crack(time)
  }

  private lose(): void {
    const s = this.state
    s.out = 1
    s.nearForce = 0
    s.farForce = 0
  }

  private rise(force: f64, travel: f64, speed: f64, time: f64): void {
    const s = this.state
    if (s.peak === 0) {
      s.contactTravel = travel
      s.contactTime = time
      s.contactSpeed = speed
    }
    s.peak = force
    s.peakTime = time
    if (isNaN(s.markTime) && force > Math.min(this.markForce, this.dentForce)) s.markTime = time
    if (force > this.crackForce) this.crack(time)
  }

  private crack(time: f64): void {
    if (!isNaN(this.state.crackTime)) return
    this.state.crackTime = time
    this.near.crack()
    this.far.crack()
  }
}
