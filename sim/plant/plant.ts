/**
 * The plant whole: motor side, jaw and part, stepped in semi-implicit Euler. The drive gives it a voltage for one period of the
 * current loop; within it the plant takes its own fixed steps. Everything is written in the gripper's frame.
 */
import type { Scenario } from '../scenario/index.ts'
import { Arm } from './arm.ts'
import { axisOf, contactsOf, jawMassOf, travelToContact } from './axis.ts'
import { Commutation } from './commutation.ts'
import { Side } from './contact/side.ts'
import { EndStops, stopStiffness } from './endstops.ts'
import { Friction } from './friction.ts'
import { Heat, type Temperatures } from './heat.ts'
import { loadFactor, Slip } from './slip.ts'
import { Transmission } from './transmission.ts'
import { Winding } from './winding.ts'

export class Plant {
  /** Travel [m] and speed [m/s] of motor side and jaw; shift of the part along the grip [m]. */
  x = 0
  v = 0
  jawX = 0
  jawV = 0
  partX = 0
  /** Force at the near and the far contact [N], and the highest of each in the last period. */
  nearForce = 0
  farForce = 0
  nearMost = 0
  farMost = 0
  /** Highest force at either contact so far [N] and when [s]; first touch [s] and the jaw's speed there [m/s]; NaN: not yet. */
  peak = 0
  peakTime = Number.NaN
  contactTime = Number.NaN
  contactSpeed = Number.NaN
  /** Travel of a jaw at first touch [m]. */
  contactTravel = Number.NaN
  crackTime = Number.NaN
  /** The part's support is gone; the part has left the jaws. */
  hanging = false
  out = false
  /** What friction amounts to for each newton of normal force, over the coefficients as given. */
  gripped = 1
  readonly arm: Arm
  readonly heat: Heat
  readonly slip: Slip
  readonly winding: Winding
  readonly near: Side
  readonly far: Side
  private partV = 0
  private readonly transmission: Transmission
  private readonly friction: Friction
  private readonly stops: EndStops
  private readonly commutation: Commutation
  private readonly shaped: boolean
  private readonly mirrored: boolean
  private readonly forceConstant: number
  private readonly resistance: number
  private readonly mass: number
  private readonly linearMass: number
  private readonly jawMass: number
  private readonly partMass: number
  private readonly gap: number
  private readonly crackForce: number
  private readonly padFriction: Scenario['jaws']['friction']
  private readonly substeps: number
  private readonly dt: number

  /** `period` [s] of the current loop and the plant's steps in it; temperatures at the start, ambient if left out. */
  constructor(scenario: Scenario, period: number, substeps: number, start?: Temperatures) {
    const { actuator, jaws, part } = scenario
    const { motor, transmission: t } = actuator
    const axis = axisOf(actuator)
    const dt = period / substeps
    this.dt = dt
    this.substeps = substeps
    this.mirrored = jaws.layout === 'mirrored'
    this.forceConstant = axis.forceConstant
    this.resistance = motor.resistance
    this.mass = axis.mass
    this.linearMass = axis.linearMass
    this.jawMass = jawMassOf(scenario)
    this.partMass = part.mass
    this.gap = travelToContact(scenario)
    this.crackForce = part.crackForce ?? Number.POSITIVE_INFINITY
    this.padFriction = jaws.friction
    const side = {
      exponent: part.exponent,
      stiffness: part.stiffness,
      padStiffness: jaws.padStiffness,
      damping: part.damping,
      relaxationFraction: part.relaxation.fraction,
      relaxationTime: part.relaxation.time,
      yieldForce: part.yieldForce ?? Number.POSITIVE_INFINITY,
      step: dt,
    }
    this.near = new Side(side)
    this.far = new Side(side)
    this.winding = new Winding(motor.inductance, dt)
    this.transmission = new Transmission(t.stiffness, t.damping, t.backlash)
    this.friction = new Friction(t, axis.mass, axis.raise, axis.lower, dt)
    const stroke = Math.min(jaws.stroke, jaws.opening / contactsOf(scenario))
    this.stops = new EndStops(stroke, stopStiffness(t.stiffness), this.jawMass)
    this.commutation = new Commutation(scenario, axis)
    this.shaped = !this.commutation.smooth
    this.slip = new Slip({ mass: part.mass, padStiffness: jaws.padStiffness, ...jaws.friction, step: dt })
    this.arm = new Arm(scenario)
    this.heat = new Heat(motor.thermal, start)
  }

  /** The support under the part goes: it hangs, or, with nothing gripping it, stays behind. */
  lift(): void {
    this.hanging = this.nearForce + this.farForce > 0
    this.out = !this.hanging
    if (this.hanging) this.slip.hang(this.arm.down, this.arm.side)
  }

  /**
   * Goes on from where another plant stands: its axis as in `takeAxis`, and its part, dented, relaxed, slid, broken or lost as it
   * is. A part that already bears more than it now takes breaks at the next step.
   */
  take(previous: Plant): void {
    this.takeAxis(previous)
    this.partX = previous.partX
    this.partV = previous.partV
    this.nearForce = previous.nearForce
    this.farForce = previous.farForce
    this.nearMost = previous.nearMost
    this.farMost = previous.farMost
    this.peak = Number.isNaN(previous.crackTime) ? Math.min(previous.peak, this.crackForce) : previous.peak
    this.peakTime = previous.peakTime
    this.contactTime = previous.contactTime
    this.contactSpeed = previous.contactSpeed
    this.contactTravel = previous.contactTravel
    this.hanging = previous.hanging
    this.out = previous.out
    this.gripped = previous.gripped
    if (!Number.isNaN(previous.crackTime)) this.crack(previous.crackTime)
    this.near.take(previous.near)
    this.far.take(previous.far)
    this.slip.take(previous.slip)
  }

  /** The axis of another plant, with a part of its own: positions, speeds, current, bristles, temperatures and the arm's moves. */
  takeAxis(previous: Plant): void {
    this.x = previous.x
    this.v = previous.v
    this.jawX = previous.jawX
    this.jawV = previous.jawV
    this.winding.take(previous.winding)
    this.friction.take(previous.friction)
    this.heat.take(previous.heat)
    this.arm.moves = previous.arm.moves
  }

  /** The part has left the jaws. */
  lose(): void {
    this.out = true
    this.nearForce = 0
    this.farForce = 0
  }

  /** Copper loss at the present current [W]. */
  get loss(): number {
    return this.winding.current * this.winding.current * this.resistance * this.heat.resistance
  }

  /**
   * One period of the current loop from `time` [s] on, with `voltage` [V] at the winding, or with its ends open, and the field of
   * an open-loop step motor at `target` [m].
   */
  advance(time: number, voltage: number, connected: boolean, target: number): void {
    const { winding, transmission, friction, near, far, stops, slip, commutation, arm } = this
    const { shaped, mirrored, hanging, out, dt, substeps, gap, mass, jawMass, partMass } = this
    const constant = this.forceConstant * this.heat.flux
    const coil = this.resistance * this.heat.resistance
    const carriedMotor = mirrored ? 0 : this.linearMass * arm.along
    const carriedJaw = mirrored ? 0 : jawMass * arm.along
    const pull = hanging ? arm.along : 0
    const gripped = hanging ? loadFactor(this.padFriction, 0.5 * (this.nearForce + this.farForce)) : 1
    const { down, side } = arm
    let { x, v, jawX, jawV, partX, partV, nearForce, farForce, peak } = this
    const plain = near.plain && far.plain
    let nearMost = 0
    let farMost = 0
    if (!connected) winding.current = 0

    for (let n = 0; n < substeps; n++) {
      const forceConstant = shaped ? constant * commutation.factor(x, target) : constant
      const current = connected ? winding.step(voltage, forceConstant * v, coil) : 0
      const link = transmission.force(x - jawX, v - jawV)
      if (!out) {
        const closed = jawX - gap
        const nearSqueeze = closed - partX
        const nearRate = jawV - partV
        const farSqueeze = mirrored ? closed + partX : partX
        const farRate = mirrored ? jawV + partV : partV
        nearForce = plain ? near.spring(nearSqueeze, nearRate) : near.step(nearSqueeze, nearRate)
        farForce = plain ? far.spring(farSqueeze, farRate) : far.step(farSqueeze, farRate)
      }
      let motor = forceConstant * current - link - friction.force(v, link) + carriedMotor
      if (shaped) motor += commutation.cogging(x)
      const load = mirrored ? nearForce + farForce : nearForce
      v += (dt * motor) / mass
      jawV += (dt * (link - load + stops.force(jawX, jawV) + carriedJaw)) / jawMass
      x += dt * v
      jawX += dt * jawV
      if (!out) {
        partV += dt * ((nearForce - farForce) / partMass + pull)
        partX += dt * partV
        if (hanging) slip.step(gripped * (nearForce + farForce), down, side)
      }
      if (nearForce > nearMost) nearMost = nearForce
      if (farForce > farMost) farMost = farForce
      const force = nearForce > farForce ? nearForce : farForce
      if (force > peak) {
        if (peak === 0) this.touch(time + n * dt, jawX, jawV)
        peak = force
        this.peakTime = time + n * dt
        if (force > this.crackForce) this.crack(time + n * dt)
      }
    }

    this.x = x
    this.v = v
    this.jawX = jawX
    this.jawV = jawV
    this.partX = partX
    this.partV = partV
    this.nearForce = nearForce
    this.farForce = farForce
    this.nearMost = nearMost
    this.farMost = farMost
    this.peak = peak
    this.gripped = gripped
  }

  private touch(time: number, travel: number, speed: number): void {
    this.contactTravel = travel
    this.contactTime = time
    this.contactSpeed = speed
  }

  private crack(time: number): void {
    if (!Number.isNaN(this.crackTime)) return
    this.crackTime = time
    this.near.crack()
    this.far.crack()
  }
}
