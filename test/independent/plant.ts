/** The continuous equations of the plant as design and Model page state them, for any integrator. */
import { type Pull, pullAt } from './arm.ts'
import { Contact } from './contact.ts'
import { AxisFriction, LoadFriction } from './friction.ts'
import { HANG, Hang, TURN } from './hang.ts'
import type { Input, Wave } from './input.ts'

/** The state: winding, motor side, driven jaws, part along the grip, bristles, gauge, lost forces of both contacts, temperatures. */
export const AT = {
  current: 0,
  travel: 1,
  speed: 2,
  jaw: 3,
  jawSpeed: 4,
  shift: 5,
  shiftSpeed: 6,
  bristle: 7,
  flanks: 8,
  gauge: 9,
  lostNear: 10,
  lostFar: 11,
  winding: 12,
  housing: 13,
}
/** From here on what hangs, once the support is gone. */
export const HANGS = 14

/** What counts as one of each for the error control: amounts that matter to the force. */
const SCALE = [0.1, 1e-6, 1e-3, 1e-6, 1e-3, 1e-6, 1e-3, 1e-7, 1e-7, 0.1, 0.1, 0.1, 1, 1]
const HANG_SCALE = [1e-6, 1e-6, 1e-3, 1e-3, 1e-6, 1e-6, 1e-5, 1e-4, 1e-2, 1e-4]

const COPPER = 0.00393
const REFERENCE = 25
const STIFFEST_STOP = 5e6

const sine = ({ amplitude, period }: Wave, x: number) =>
  amplitude === 0 ? 0 : amplitude * Math.sin((2 * Math.PI * x) / period)

export class Plant {
  readonly input: Input
  readonly hang: Hang
  private readonly near: Contact
  private readonly far: Contact
  private readonly friction: AxisFriction
  private readonly flanks: LoadFriction
  /** Travel of a jaw to first touch, and to its end stop [m]. */
  readonly touch: number
  private readonly end: number
  private readonly stop: { stiffness: number; damping: number }
  voltage = 0
  winding: 'driven' | 'open' | 'shorted' = 'driven'
  /** The part stands on its support, hangs between the pads, or has left them. */
  part: 'stands' | 'hangs' | 'gone' = 'stands'
  cracked = false
  /** Of the last evaluation: forces at the contacts and in the transmission [N], pull [m/s²]. */
  nearForce = 0
  farForce = 0
  link = 0
  stretch = 0
  private pull: Pull = { along: 0, down: 0, across: 0 }

  constructor(input: Input) {
    const { jaws, link, part } = input
    this.input = input
    this.hang = new Hang(input)
    this.near = new Contact(input)
    this.far = new Contact(input)
    this.friction = new AxisFriction(input)
    this.flanks = new LoadFriction(input)
    this.touch = (jaws.opening - part.width) / jaws.contacts
    this.end = Math.min(jaws.stroke, jaws.opening / jaws.contacts)
    const stiffness = Math.min(link.stiffness, STIFFEST_STOP)
    this.stop = { stiffness, damping: Math.sqrt(stiffness * jaws.mass) }
  }

  start(): number[] {
    const state = new Array<number>(HANGS).fill(0)
    state[AT.winding] = this.input.motor.ambient
    state[AT.housing] = this.input.motor.ambient
    return state
  }

  get scale(): number[] {
    return this.part === 'hangs' ? [...SCALE, ...HANG_SCALE.slice(0, this.hang.size)] : SCALE
  }

  /** Angle by which the part has turned about the grip axis [rad]. */
  turnedOf(y: number[]): number {
    return this.part === 'hangs' && this.hang.turns ? y[HANGS + TURN.angle]! : 0
  }

  get dents() {
    return { near: this.near.dent, far: this.far.dent }
  }

  derivative = (time: number, y: number[]): number[] => {
    const { input } = this
    const { mirrored } = input.jaws
    const { motor } = input
    const dy = new Array<number>(y.length).fill(0)
    const travel = y[AT.travel]!
    const speed = y[AT.speed]!
    const jaw = y[AT.jaw]!
    const jawSpeed = y[AT.jawSpeed]!
    const shiftSpeed = y[AT.shiftSpeed]!
    const pull = pullAt(input.arm, time)
    this.pull = pull

    this.stretch = this.stretchAt(travel - jaw)
    const link = input.link.stiffness * this.stretch + input.link.damping * (speed - jawSpeed)
    this.link = link
    this.press(y, dy)
    this.friction.at(y[AT.bristle]!, speed)
    this.flanks.at(y[AT.flanks]!, speed, link)

    const current = this.winding === 'open' ? 0 : y[AT.current]!
    const voltage = this.winding === 'driven' ? this.voltage : 0
    const resistance = motor.resistance * (1 + COPPER * (y[AT.winding]! - REFERENCE))
    const constant = this.constantAt(travel, y[AT.housing]!)
    if (this.winding !== 'open') dy[AT.current] = (voltage - resistance * current - constant * speed) / motor.inductance

    // The coupling of two driven jaws bears what the arm does to them.
    const carried = mirrored ? 0 : pull.along
    const { mass, linearMass, cogging } = input.axis
    dy[AT.travel] = speed
    dy[AT.speed] =
      (constant * current +
        sine(cogging, travel) -
        link -
        this.friction.force -
        this.flanks.force +
        linearMass * carried) /
      mass
    dy[AT.jaw] = jawSpeed
    const against = this.nearForce + (mirrored ? this.farForce : 0)
    const jawAcceleration = (link - against + this.stopForce(jaw, jawSpeed)) / input.jaws.mass + carried
    dy[AT.jawSpeed] = jawAcceleration
    dy[AT.shift] = shiftSpeed
    dy[AT.shiftSpeed] =
      this.part === 'gone'
        ? 0
        : (this.nearForce - this.farForce) / input.part.mass + (this.part === 'hangs' ? pull.along : 0)
    dy[AT.bristle] = this.friction.rate
    dy[AT.flanks] = this.flanks.rate

    const { gauge } = input
    dy[AT.gauge] = gauge.bandwidth * (this.nearForce + gauge.fingerMass * (jawAcceleration - pull.along) - y[AT.gauge]!)
    this.warm(y, resistance * current * current, dy)
    if (this.part === 'hangs') this.hang.rates(y, HANGS, pull, this.nearForce + this.farForce, dy)
    return dy
  }

  /** After an accepted step: dents stay, a part breaks, a slide begins or ends. True if the equations have changed. */
  settle(time: number, y: number[]): boolean {
    this.derivative(time, y)
    this.near.dent = this.near.dentNow
    this.far.dent = this.far.dentNow
    let changed = this.part === 'hangs' && this.hang.settle()
    if (!this.cracked && Math.max(this.nearForce, this.farForce) > this.input.part.crackForce) {
      this.cracked = true
      this.near.crack()
      this.far.crack()
      changed = true
    }
    return changed
  }

  /** The support goes: the state with what hangs. A part that nothing grips stays behind. */
  lift(time: number, y: number[]): number[] {
    this.derivative(time, y)
    const normal = this.nearForce + this.farForce
    if (normal === 0) return this.leave(y)
    this.part = 'hangs'
    return [...y, ...this.hang.start(this.pull, normal)]
  }

  /** The part has left the jaws for good. */
  leave(y: number[]): number[] {
    this.part = 'gone'
    const state = y.slice(0, HANGS)
    state[AT.shiftSpeed] = 0
    return state
  }

  /** The part stands on its support again. */
  stand(y: number[]): number[] {
    if (this.part === 'hangs') this.part = 'stands'
    return y.slice(0, HANGS)
  }

  /** Kinetic energy and that of all springs along the grip [J]. */
  energy(time: number, y: number[]): number {
    this.derivative(time, y)
    const { axis, jaws, part, link, friction } = this.input
    const kinetic =
      axis.mass * y[AT.speed]! ** 2 + jaws.mass * y[AT.jawSpeed]! ** 2 + part.mass * y[AT.shiftSpeed]! ** 2
    const springs = link.stiffness * this.stretch ** 2 + friction.bristleStiffness * y[AT.bristle]! ** 2
    return (kinetic + springs) / 2 + this.near.energy + this.far.energy
  }

  private press(y: number[], dy: number[]) {
    if (this.part === 'gone') {
      this.nearForce = 0
      this.farForce = 0
      return
    }
    const closed = y[AT.jaw]! - this.touch
    const jawSpeed = y[AT.jawSpeed]!
    const shift = y[AT.shift]!
    const shiftSpeed = y[AT.shiftSpeed]!
    const { mirrored } = this.input.jaws
    this.near.at(closed - shift, jawSpeed - shiftSpeed, y[AT.lostNear]!)
    this.far.at(mirrored ? closed + shift : shift, mirrored ? jawSpeed + shiftSpeed : shiftSpeed, y[AT.lostFar]!)
    this.nearForce = this.near.force
    this.farForce = this.far.force
    dy[AT.lostNear] = this.near.lossRate
    dy[AT.lostFar] = this.far.lossRate
  }

  private stretchAt(lead: number): number {
    const half = this.input.link.backlash / 2
    if (lead > half) return lead - half
    return lead < -half ? lead + half : 0
  }

  private stopForce(jaw: number, speed: number): number {
    const { stiffness, damping } = this.stop
    if (jaw < 0) return Math.max(0, -stiffness * jaw - damping * speed)
    if (jaw > this.end) return Math.min(0, -stiffness * (jaw - this.end) - damping * speed)
    return 0
  }

  private constantAt(travel: number, housing: number): number {
    const { motor, axis, jaws } = this.input
    const flux = Math.max(0, 1 + motor.magnet * (housing - REFERENCE))
    const fromMiddle = (2 * travel) / jaws.stroke - 1
    return axis.forceConstant * flux * (1 + sine(axis.ripple, travel)) * (1 - motor.endLoss * fromMiddle * fromMiddle)
  }

  private warm(y: number[], loss: number, dy: number[]) {
    const { windingResistance, windingTime, housingResistance, housingTime, ambient } = this.input.motor
    const winding = y[AT.winding]!
    const housing = y[AT.housing]!
    const toHousing = (winding - housing) / windingResistance
    dy[AT.winding] = ((loss - toHousing) * windingResistance) / windingTime
    dy[AT.housing] = ((toHousing - (housing - ambient) / housingResistance) * housingResistance) / housingTime
  }
}

/** Way that the part has slid in the pads [m]. */
export const slidOf = (y: number[]): number => (y.length > HANGS ? y[HANGS + HANG.slid]! : 0)
