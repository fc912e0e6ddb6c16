/**
 * The part in the shear of the pads: spring and damper in series with a Coulomb slider, in both directions of the pad plane, and
 * for a part gripped off its centre also about the grip axis, on one limit surface (Howe and Cutkosky 1996). An angle enters as the
 * way at the radius of friction, and a torque as the force there.
 */
import type { Pull } from './arm.ts'
import type { Input } from './input.ts'

/** Shear over compressive stiffness of a pad, damping ratio of the part on the pads, radius of friction over that of a pad. */
const SHEAR = 1 / 3
const DAMPING_RATIO = 0.1
const FRICTION_RADIUS = 2 / 3

/** Offsets in the state of what hangs: shift and speed [m, m/s] down and across, stretch of the pads [m], way slid [m]. */
export const HANG = { down: 0, across: 1, downSpeed: 2, acrossSpeed: 3, stretchDown: 4, stretchAcross: 5, slid: 6 }
/** And what turns: angle [rad], its speed [rad/s], twist of the pads [rad]. */
export const TURN = { angle: 7, speed: 8, twist: 9 }

export const HANGING = 7
export const TURNING = 10

export class Hang {
  readonly stiffness: number
  readonly damping: number
  readonly radius: number
  readonly turns: boolean
  private readonly input: Pick<Input, 'jaws' | 'part'>
  slides = false
  /** Trial force over the cap: beyond 1 it slides. */
  use = 0

  constructor(input: Pick<Input, 'jaws' | 'part'>) {
    const { jaws, part } = input
    this.input = input
    this.stiffness = 2 * SHEAR * jaws.padStiffness
    this.damping = 2 * DAMPING_RATIO * Math.sqrt(this.stiffness * part.mass)
    this.radius = FRICTION_RADIUS * jaws.padRadius
    this.turns = part.centre.up !== 0 || part.centre.across !== 0
  }

  get size() {
    return this.turns ? TURNING : HANGING
  }

  /** What friction can carry [N] under the sum of both normal forces [N]. */
  cap(normal: number): number {
    const { staticFriction, slidingFriction, loadExponent, referenceForce } = this.input.jaws
    if (normal <= 0) return 0
    const factor = loadExponent === 1 ? 1 : (normal / (2 * referenceForce)) ** (loadExponent - 1)
    return (this.slides ? slidingFriction : staticFriction) * factor * normal
  }

  /** The pads take over the weight without a swing; what friction cannot carry slides from the first instant. */
  start(pull: Pull, normal: number): number[] {
    const { mass, centre } = this.input.part
    const down = mass * pull.down
    const across = mass * pull.across
    // Centre of mass (down, across) from the pads: (−up, across).
    const torque = this.turns ? -centre.up * across - centre.across * down : 0
    const demand = Math.hypot(down, across, torque / this.radius)
    this.slides = demand > this.cap(normal)
    const share = 1 / this.stiffness
    const state = [0, 0, 0, 0, down * share, across * share, 0]
    // Stretched pads under a part at rest: shift and stretch are the same from here on.
    state[HANG.down] = down * share
    state[HANG.across] = across * share
    if (!this.turns) return state
    const twist = (torque * share) / (this.radius * this.radius)
    return [...state, twist, 0, twist]
  }

  /** Writes the rates of the state from `at` on in y into dy; `normal` is the sum of both normal forces [N]. */
  rates(y: number[], at: number, pull: Pull, normal: number, dy: number[]) {
    const { stiffness: k, damping: c, radius: r } = this
    const { mass, centre, gyration } = this.input.part
    const vd = y[at + HANG.downSpeed]!
    const va = y[at + HANG.acrossSpeed]!
    const sd = y[at + HANG.stretchDown]!
    const sa = y[at + HANG.stretchAcross]!
    const spin = this.turns ? y[at + TURN.speed]! : 0
    const twist = this.turns ? y[at + TURN.twist]! : 0
    const yd = k * sd + c * vd
    const ya = k * sa + c * va
    const yt = r * (k * twist + c * spin)
    const trial = Math.sqrt(yd * yd + ya * ya + yt * yt)
    const cap = this.cap(normal)
    const share = trial > cap ? cap / trial : 1
    this.use = trial > 0 ? trial / cap : 0
    const fd = yd * share
    const fa = ya * share
    const slipDown = vd - (fd - k * sd) / c
    const slipAcross = va - (fa - k * sa) / c
    let accelerationDown = pull.down - fd / mass
    let accelerationAcross = pull.across - fa / mass
    if (this.turns) {
      const torque = yt * share * r
      const angle = y[at + TURN.angle]!
      const cos = Math.cos(angle)
      const sin = Math.sin(angle)
      // Arm from the pads to the centre of mass, turned from down towards across.
      const armDown = -centre.up * cos - centre.across * sin
      const armAcross = -centre.up * sin + centre.across * cos
      const turning = (armDown * fa - armAcross * fd - torque) / (mass * gyration * gyration)
      accelerationDown += turning * armAcross + spin * spin * armDown
      accelerationAcross += -turning * armDown + spin * spin * armAcross
      dy[at + TURN.angle] = spin
      dy[at + TURN.speed] = turning
      dy[at + TURN.twist] = (torque / (r * r) - k * twist) / c
    }
    dy[at + HANG.down] = vd
    dy[at + HANG.across] = va
    dy[at + HANG.downSpeed] = accelerationDown
    dy[at + HANG.acrossSpeed] = accelerationAcross
    dy[at + HANG.stretchDown] = vd - slipDown
    dy[at + HANG.stretchAcross] = va - slipAcross
    dy[at + HANG.slid] = Math.sqrt(slipDown * slipDown + slipAcross * slipAcross)
  }

  /** After an accepted step: does it begin or cease to slide? */
  settle(): boolean {
    const slides = this.use > 1
    if (slides === this.slides) return false
    this.slides = slides
    return true
  }
}
