/**
 * Friction of the axis, at the output coordinate: LuGre bristles (Canudas de Wit, Olsson, Åström, Lischinsky, IEEE Trans.
 * Automatic Control 40(3), 1995) with the Stribeck curve of Hess and Soom (1990), g(v) = Fc + (Fs − Fc)/(1 + (v/vs)²):
 * ż = v − α·σ0|v|z/g, F = σ0 z + σ1 ż + σ2 v. Up to a share of their reach the bristles are purely elastic, α = 0, and so they are
 * while they spring back (elasto-plastic friction, Dupont, Hayward, Armstrong, Altpeter, IEEE Trans. Automatic Control 47(5), 2002):
 * a load at rest does not creep, however it is shaken. For thread or gear a part is a share of the load once a second bristle has
 * been carried over its reach, by the same law. Its reach does not grow with the load, as a contact's tangential stiffness grows with
 * its normal force (Mindlin 1949). Bristles are updated implicitly, so they never pass their ends.
 */
import { Block, State } from '../core/block.ts'
import { LOAD_DAMPING, LOAD_REACH } from './flanks.ts'

/** Share of its reach up to which a bristle is elastic; between it and the whole reach it gives way more and more. */
export const ELASTIC: f64 = 0.9
const PER_YIELDING: f64 = 1 / (1 - ELASTIC)
/** Keeps 0/0 away where an axis has no friction at all. */
const TINY: f64 = 1e-300
/** A bristle may stand past its end by rounding alone. */
const ROUNDING: f64 = 1e-9

class FrictionState extends State {
  /** Deflection of the bristles, and of those of the loaded flanks [m]. */
  bristle: f64 = 0
  loadBristle: f64 = 0
  /** Stiffness under which the bristle stands [N/m]. */
  stiffness: f64 = 0
}

/** Share of sliding in the motion of a bristle bent by so much of its reach: 0 elastic, then 3u² − 2u³ over what is left, 1 all of it. */
// @inline
function givesWay(bent: f64): f64 {
  const u: f64 = (bent - ELASTIC) * PER_YIELDING
  if (u >= 1) return 1
  if (u <= 0) return 0
  return u * u * (3 - 2 * u)
}

/**
 * Share of its deflection that a bristle keeps as it bends on beyond what is elastic: it gives way by the share that it has come to at the
 * end of the step, as one correction finds it. `bent` is the force under which it would stand, `path` what the step adds to it, `level` the
 * highest [N]; all three may be multiples of these, by one factor.
 */
// @inline
function kept(bent: f64, path: f64, level: f64): f64 {
  const near: f64 = bent / (level + givesWay(bent / level) * path)
  const share: f64 = level / (level + givesWay(near) * path)
  return bent * share < level ? share : level / bent
}

export class Friction extends Block {
  /** [N] and [N·s/m], forwards and back; break-away over Coulomb [N], 1/vs² [s²/m²], σ0 [N/m] */
  coulomb: f64 = 0
  coulombBack: f64 = 0
  viscous: f64 = 0
  viscousBack: f64 = 0
  rise: f64 = 0
  stribeck: f64 = 0
  stiffness: f64 = 0
  /** Mass that the bristles hold [kg]. */
  mass: f64 = 1
  /** σ1/dt with σ1 = √(σ0·mass), which damps that mass on its bristles with ratio one half [N/m]. */
  damping: f64 = 0
  /** Newtons of friction for each newton of load, moving against it and with it. */
  raise: f64 = 0
  lower: f64 = 0
  /** Travel before loaded flanks slide [m]. */
  reach: f64 = LOAD_REACH
  /** 1/reach [1/m], and damping of the loaded flanks' stretch over the step. */
  private perReach: f64 = 1 / LOAD_REACH
  loadDamping: f64 = 0
  /** [s] */
  step: f64 = 0
  readonly state: FrictionState = new FrictionState()

  setStep(step: f64): void {
    this.step = step
    this.damping = Math.sqrt(this.stiffness * this.mass) / step
    this.loadDamping = LOAD_DAMPING / step
    this.perReach = 1 / this.reach
  }

  /** Fastest rate [rad/s] under a load of up to `force` [N]. */
  fastest(force: f64): f64 {
    const loaded: f64 = (Math.max(this.raise, this.lower) * force) / (this.reach * this.mass)
    const springs: f64 = Math.max(Math.sqrt(this.stiffness / this.mass), Math.sqrt(loaded))
    return Math.max(springs, Math.max(Math.max(this.viscous, this.viscousBack) / this.mass, loaded * LOAD_DAMPING))
  }

  /** Bristles bent to the same force as under the constants before, as far as the present ones allow. */
  settle(): void {
    const s = this.state
    if (s.stiffness > 0) {
      const most: f64 = ((1 + ROUNDING) * (Math.max(this.coulomb, this.coulombBack) + this.rise)) / this.stiffness
      const bristle: f64 = s.bristle * (s.stiffness / this.stiffness)
      s.bristle = Math.max(-most, Math.min(most, bristle))
    }
    s.stiffness = this.stiffness
  }

  /** Friction force [N] against `speed` [m/s] under `load` [N], positive where the load pushes the axis back. */
  // @inline
  force(speed: f64, load: f64): f64 {
    const move: f64 = speed * this.step
    const back: bool = speed < 0
    const coulomb: f64 = back ? this.coulombBack : this.coulomb
    const viscous: f64 = back ? this.viscousBack : this.viscous
    const old: f64 = this.state.bristle
    let bristle: f64 = old + move
    const bent: f64 = this.stiffness * Math.abs(bristle)
    // The level is never below Coulomb's, and what springs back is elastic: most of the time there is no need to know it.
    if (bent > ELASTIC * coulomb && bristle * move > 0) {
      // The level g times this, as a quotient by which alone is divided need not be worked out.
      const over: f64 = 1 + speed * speed * this.stribeck
      const level: f64 = coulomb * over + this.rise
      if (bent * over > ELASTIC * level) {
        const path: f64 = this.stiffness * Math.abs(move) * over
        if (this.stiffness * Math.abs(old) * over >= level) bristle *= level / (level + path + TINY)
        else bristle *= kept(bent * over, path, level)
      }
    }
    this.state.bristle = bristle
    const own: f64 = this.stiffness * bristle + this.damping * (bristle - old) + viscous * speed
    return this.raise + this.lower === 0 ? own : own + this.loaded(move, load)
  }

  private loaded(move: f64, load: f64): f64 {
    const reach: f64 = this.reach
    const old: f64 = this.state.loadBristle
    let bristle: f64 = old + move
    const bent: f64 = Math.abs(bristle)
    if (bent > ELASTIC * reach && bristle * move > 0) {
      if (Math.abs(old) >= reach) bristle *= reach / (reach + Math.abs(move))
      else bristle *= kept(bent, Math.abs(move), reach)
    }
    this.state.loadBristle = bristle
    const share: f64 = bristle * load > 0 ? this.raise : this.lower
    return share * this.perReach * Math.abs(load) * (bristle + this.loadDamping * (bristle - old))
  }
}
