/**
 * The part across the grip axis: it hangs by friction at both contacts, and turns about them where they hold it off its centre of
 * mass. The shear of the pads is a spring and damper in series with a slider that carries µ·ΣN (after Cundall and Strack,
 * Géotechnique 29, 1979) with a static and a sliding coefficient. Friction force and friction torque share one limit surface,
 * (f/µN)² + (m/(µN·r))² ≤ 1 (Howe and Cutkosky, Int. J. Robotics Research 15, 1996), so torque over r is a third component of one
 * force, and r times the angle a third of one way. While it slides the shear is integrated, ṡ = (f − k·s)/c along the sliding: its
 * direction follows the distance and not the step.
 */
import { Block, State } from '../../core/block.ts'
import { cosine, sine } from '../../core/elementary.ts'
import { fading, RESTING } from '../../core/fading.ts'
import { leastRoot } from '../../core/least.ts'

/** Shear stiffness of a rubber block over its compressive stiffness, G/E of an incompressible material. */
export const SHEAR: f64 = 1 / 3
/** Damping ratio of the part on the pads' shear stiffness; common practice for elastomers, no source. */
export const DAMPING_RATIO: f64 = 0.1

/** Of both pads [N/m]. */
export function shearStiffness(padStiffness: f64): f64 {
  return 2 * SHEAR * padStiffness
}

class SlipState extends State {
  /** Way of the part at the pads' centre [m], down and sideways, and the angle by which it has turned [rad]. */
  sag: f64 = 0
  drift: f64 = 0
  turn: f64 = 0
  sagSpeed: f64 = 0
  driftSpeed: f64 = 0
  turnSpeed: f64 = 0
  /** Shear of the pads [m]; the turn's at the radius r. */
  sagStretch: f64 = 0
  driftStretch: f64 = 0
  turnStretch: f64 = 0
  sliding: f64 = 0
  /** Way slid so far at the pads' centre [m], and angle slid so far about it [rad]. */
  distance: f64 = 0
  twisted: f64 = 0
  /** Squares of what the pads asked of friction in the last step and of what it could carry [N²]. */
  asked: f64 = 0
  able: f64 = 0
  /** Least of what static friction could carry over what was asked, as the part broke away; Infinity: it never did. */
  least: f64 = Infinity
  /** Largest angle so far [rad]. */
  mostTurn: f64 = 0
}

export class Slip extends Block {
  /** [kg], moment of inertia about the grip axis through the centre of mass [kg·m²], [1/kg], [1/(kg·m²)] */
  mass: f64 = 1
  perMass: f64 = 1
  perInertia: f64 = 1
  /** Shear of both pads [N/m], [N·s/m]; coefficients. */
  stiffness: f64 = 1
  damping: f64 = 0
  staticFriction: f64 = 1
  slidingFriction: f64 = 1
  /** Centre of mass off the pads' centre, down and sideways [m]: 1 if it is; and the radius r of the limit surface [m]. */
  below: f64 = 0
  beside: f64 = 0
  turns: f64 = 0
  radius: f64 = 1
  /** [s]; what one step keeps of the shear while it slides, and adds of it for each newton carried [m/N]. */
  step: f64 = 0
  private keeps: f64 = 1
  private gives: f64 = 0
  readonly state: SlipState = new SlipState()

  /** Mass of the part [kg], its radius of gyration about the grip axis [m], stiffness of one pad [N/m]. */
  set(mass: f64, gyration: f64, padStiffness: f64): void {
    this.mass = mass
    this.perMass = 1 / mass
    this.perInertia = 1 / (mass * gyration * gyration)
    this.stiffness = shearStiffness(padStiffness)
    this.damping = 2 * DAMPING_RATIO * Math.sqrt(this.stiffness * mass)
  }

  /** Where the centre of mass lies, seen from the pads' centre, and the radius of the limit surface [m]. */
  gripAt(below: f64, beside: f64, radius: f64): void {
    this.below = below
    this.beside = beside
    this.turns = below !== 0 || beside !== 0 ? 1 : 0
    this.radius = radius
  }

  setStep(step: f64): void {
    this.step = step
    this.keeps = 1 / (1 + (step * this.stiffness) / this.damping)
    this.gives = (step / this.damping) * this.keeps
  }

  /** Fastest rate [rad/s]: straight, and turning on the same springs. */
  fastest(): f64 {
    const lever: f64 = this.below * this.below + this.beside * this.beside + this.radius * this.radius
    const turning: f64 = this.turns > 0 ? lever * this.perInertia : 0
    return Math.sqrt(this.stiffness * (this.perMass + turning))
  }

  /** The support goes slowly, so the pads take the weight without a swing; what friction cannot carry of it slides from the first step. */
  hang(grip: f64, down: f64, side: f64): void {
    const s = this.state
    const y: f64 = this.mass * down
    const z: f64 = this.mass * side
    const t: f64 = (this.mass * (this.below * side - this.beside * down)) / this.radius
    s.sliding = Math.sqrt(y * y + z * z + t * t) > this.staticFriction * grip ? 1 : 0
    s.sagStretch = y / this.stiffness
    s.driftStretch = z / this.stiffness
    s.turnStretch = t / this.stiffness
    s.sag = s.sagStretch
    s.drift = s.driftStretch
    s.turn = s.turnStretch / this.radius
    s.mostTurn = Math.abs(s.turn)
  }

  /** What friction could carry over what the pads asked of it in the last step, where that is less than `least`. */
  spare(least: f64): f64 {
    const s = this.state
    return s.asked > 0 ? leastRoot(least, s.able, s.asked) : least
  }

  /** It has slid, be it ever so little. */
  hasSlid(): bool {
    return this.state.least < Infinity
  }

  /** Where nothing pulls a swing dies away to nothing; called once a period, as no step can tell. */
  calm(): void {
    const s = this.state
    if (Math.abs(s.driftSpeed) < RESTING && s.driftSpeed !== 0) {
      s.driftSpeed = 0
      s.driftStretch = fading(s.driftStretch)
      s.drift = fading(s.drift)
    }
    if (Math.abs(s.sagSpeed) < RESTING && s.sagSpeed !== 0) {
      s.sagSpeed = 0
      s.sagStretch = fading(s.sagStretch)
      s.sag = fading(s.sag)
    }
    if (Math.abs(s.turnSpeed) < RESTING && s.turnSpeed !== 0) {
      s.turnSpeed = 0
      s.turnStretch = fading(s.turnStretch)
      s.turn = fading(s.turn)
    }
  }

  /** `grip` is what both contact forces amount to for friction [N]; `down` and `side` what pulls on the part [m/s²]. */
  // @inline
  move(grip: f64, down: f64, side: f64): void {
    const s = this.state
    const y: f64 = this.stiffness * s.sagStretch + this.damping * s.sagSpeed
    const z: f64 = this.stiffness * s.driftStretch + this.damping * s.driftSpeed
    const t: f64 = this.turns > 0 ? this.torque() : 0
    const cap: f64 = (s.sliding > 0 ? this.slidingFriction : this.staticFriction) * grip
    const asked: f64 = y * y + z * z + t * t
    const able: f64 = cap * cap
    s.asked = asked
    s.able = able
    if (asked > able) this.slide(y, z, t, grip, down, side)
    else if (this.turns > 0) this.stick(y, z, t, down, side)
    else this.stickStraight(y, z, down, side)
  }

  /** Of the pads over the radius r [N]. */
  private torque(): f64 {
    return this.stiffness * this.state.turnStretch + this.damping * this.radius * this.state.turnSpeed
  }

  private stick(y: f64, z: f64, t: f64, down: f64, side: f64): void {
    const s = this.state
    this.swing(y, z, t)
    s.turnStretch += this.step * this.radius * s.turnSpeed
    this.stickStraight(y, z, down, side)
  }

  /** Where the pads stick all of the way shears them. */
  // @inline
  private stickStraight(y: f64, z: f64, down: f64, side: f64): void {
    const s = this.state
    const step: f64 = this.step
    const sagSpeed: f64 = s.sagSpeed + step * (down - y * this.perMass)
    const driftSpeed: f64 = s.driftSpeed + step * (side - z * this.perMass)
    s.sliding = 0
    s.sagSpeed = sagSpeed
    s.driftSpeed = driftSpeed
    s.sag += step * sagSpeed
    s.drift += step * driftSpeed
    s.sagStretch += step * sagSpeed
    s.driftStretch += step * driftSpeed
  }

  /** A step of sliding, under trial forces beyond what friction carries: it carries its share of each. */
  private slide(y: f64, z: f64, t: f64, grip: f64, down: f64, side: f64): void {
    const s = this.state
    const pull: f64 = Math.sqrt(s.asked)
    const scale: f64 = (this.slidingFriction * grip) / pull
    if (s.sliding === 0 || !this.hasSlid())
      s.least = Math.min(s.least, Math.min(1, (this.staticFriction * grip) / pull))
    s.sliding = 1
    const way: f64 = (this.step * (1 - scale)) / this.damping
    s.distance += way * Math.sqrt(y * y + z * z)
    s.twisted += (way * Math.abs(t)) / this.radius
    s.sagStretch = s.sagStretch * this.keeps + y * scale * this.gives
    s.driftStretch = s.driftStretch * this.keeps + z * scale * this.gives
    s.turnStretch = s.turnStretch * this.keeps + t * scale * this.gives
    this.push(y * scale, z * scale, t * scale, down, side)
  }

  /** Moves the part under the pads' forces on it and what pulls. */
  private push(y: f64, z: f64, t: f64, down: f64, side: f64): void {
    const s = this.state
    if (this.turns > 0) this.swing(y, z, t)
    s.sagSpeed += this.step * (down - y * this.perMass)
    s.driftSpeed += this.step * (side - z * this.perMass)
    s.sag += this.step * s.sagSpeed
    s.drift += this.step * s.driftSpeed
  }

  /** The turn, and what it does to the point at the pads: the centre of mass swings about it. */
  private swing(y: f64, z: f64, t: f64): void {
    const s = this.state
    const cos: f64 = cosine(s.turn)
    const sin: f64 = sine(s.turn)
    const below: f64 = cos * this.below - sin * this.beside
    const beside: f64 = sin * this.below + cos * this.beside
    const turning: f64 = (below * z - beside * y - t * this.radius) * this.perInertia
    const square: f64 = s.turnSpeed * s.turnSpeed
    s.turnSpeed += this.step * turning
    s.sagSpeed += this.step * (beside * turning + square * below)
    s.driftSpeed += this.step * (square * beside - below * turning)
    s.turn += this.step * s.turnSpeed
    const size: f64 = Math.abs(s.turn)
    if (size > s.mostTurn) s.mostTurn = size
  }
}
