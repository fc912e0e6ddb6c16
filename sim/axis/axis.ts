/**
 * The axis whole, from winding to end stops, stepped in semi-implicit Euler against a load. The drive gives it a voltage for one
 * period of the current loop; within it the axis takes its own fixed steps. Everything is written in the frame of the body that
 * the arm carries; the output's travel is in metres, or in radians where the job says so.
 */
import { Block, State } from '../core/block.ts'
import { Commutation } from './commutation.ts'
import { EndStops } from './endstops.ts'
import { Friction } from './friction.ts'
import { Heat } from './heat.ts'
import type { Load } from './load.ts'
import { Transmission } from './transmission.ts'
import { Winding } from './winding.ts'

class AxisState extends State {
  /** Motor side, seen from the output, and output: travel [m] and speed [m/s]. */
  motorTravel: f64 = 0
  motorSpeed: f64 = 0
  travel: f64 = 0
  speed: f64 = 0
}

export class Axis extends Block {
  /** Reflected mass of the motor side, its share that moves in a straight line, mass of the output [kg]. */
  mass: f64 = 1
  linearMass: f64 = 0
  outputMass: f64 = 1
  /** Force at the output for each ampere [N/A], and back-EMF for each m/s of its speed [V·s/m]. */
  forcePerAmpere: f64 = 1
  /** [A] */
  peakCurrent: f64 = 1
  /** Integration step [s], and how many make a period of the current loop. */
  step: f64 = 1e-5
  steps: f64 = 1
  /** Change of speed in a step for each newton, of motor side and output [s/kg]. */
  kick: f64 = 1e-5
  outputKick: f64 = 1e-5
  readonly winding: Winding = new Winding()
  readonly transmission: Transmission = new Transmission()
  readonly friction: Friction = new Friction()
  readonly stops: EndStops = new EndStops()
  readonly commutation: Commutation = new Commutation()
  readonly heat: Heat = new Heat()
  readonly state: AxisState = new AxisState()
  /** As warm as it is: force for each ampere [N/A], and what a step keeps of the current. */
  constant: f64 = 1
  keeps: f64 = 1
  /** 1: its force depends on position. */
  shaped: f64 = 0

  /** Upper estimate of the force in the axis [N]: peak current and cogging, and an impact twice that on top. */
  highestForce(): f64 {
    return (this.forcePerAmpere * this.peakCurrent + this.commutation.coggingForce) * 3
  }

  /** Fastest rate in the axis [rad/s], from every spring and damper and the masses at its ends. */
  fastest(): f64 {
    const link: f64 = this.transmission.fastest(this.mass, this.outputMass)
    const motor: f64 = Math.max(
      this.winding.fastest(this.forcePerAmpere, this.mass),
      this.commutation.fastest(this.mass),
    )
    const own: f64 = Math.max(this.friction.fastest(this.highestForce()), this.stops.fastest(this.outputMass))
    return Math.max(link, Math.max(motor, own))
  }

  /** Integration step [s], and how many make a period of the current loop. */
  setStep(step: f64, steps: f64): void {
    this.step = step
    this.steps = steps
    this.kick = step / this.mass
    this.outputKick = step / this.outputMass
    this.winding.setStep(step)
    this.friction.setStep(step)
  }

  /** The output carries more or less than before. */
  carry(mass: f64): void {
    this.outputMass = mass
    this.outputKick = this.step / mass
  }

  /** Motor current [A]. */
  current(): f64 {
    return this.winding.state.current
  }

  /** Copper loss at the present current [W]. */
  loss(): f64 {
    const current: f64 = this.winding.state.current
    return current * current * this.winding.resistance * this.heat.resistance
  }

  /** After a change of constants or of state from outside. */
  settle(): void {
    this.friction.settle()
    this.heat.settle()
    this.shaped = this.commutation.shaped() ? 1 : 0
    this.warmed()
  }

  /** `time` [s] under the present current goes by for motor and housing. */
  warm(time: f64): void {
    this.heat.step(this.loss(), time)
    this.warmed()
  }

  private warmed(): void {
    this.constant = this.forcePerAmpere * this.heat.flux
    this.keeps = this.winding.keeps(this.winding.resistance * this.heat.resistance)
  }

  /**
   * One period of the current loop from `time` [s] on: `voltage` [V] at the winding, or its ends open; `pull` [m/s²] of the arm on
   * what moves in a straight line; the field of an open-loop step motor at `target` [m].
   */
  advance(load: Load, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void {
    if (!connected) this.winding.state.current = 0
    load.stride(this, time, voltage, connected, pull, target)
  }
}
