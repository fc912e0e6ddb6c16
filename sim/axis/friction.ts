/**
 * Friction of the axis, at the output coordinate: LuGre bristles (Canudas de Wit, Olsson, Åström, Lischinsky, IEEE Trans.
 * Automatic Control 40(3), 1995) with the Stribeck curve of Hess and Soom (1990), g(v) = Fc + (Fs − Fc)/(1 + (v/vs)²):
 * ż = v − σ0|v|z/g, F = σ0 z + σ1 ż + σ2 v; and, for thread or gear, a part that is a share of the load once a second bristle
 * has been carried over its reach: żl = v − |v|·zl/reach. Its reach does not grow with the load, as a contact's tangential
 * stiffness grows with its normal force (Mindlin 1949). Bristles are updated implicitly, so they never pass their ends.
 */
import { Block, State } from '../core/block.ts'

/** Travel before loaded flanks slide [m], and the damping of that stretch as a time [s]; common practice, no source. */
export const LOAD_REACH: f64 = 2e-6
export const LOAD_DAMPING: f64 = 2e-4
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

export class Friction extends Block {
  /** [N], break-away over Coulomb [N], 1/vs² [s²/m²], [N·s/m], [N/m] */
  coulomb: f64 = 0
  rise: f64 = 0
  stribeck: f64 = 0
  viscous: f64 = 0
  stiffness: f64 = 0
  /** Mass that the bristles hold [kg]. */
  mass: f64 = 1
  /** σ1/dt with σ1 = √(σ0·mass), which damps that mass on its bristles with ratio one half [N/m]. */
  damping: f64 = 0
  /** Newtons of friction for each newton of load, moving against it and with it. */
  raise: f64 = 0
  lower: f64 = 0
  /** Damping of the loaded flanks' stretch over the step. */
  loadDamping: f64 = 0
  /** [s] */
  step: f64 = 0
  readonly state: FrictionState = new FrictionState()

  setStep(step: f64): void {
    this.step = step
    this.damping = Math.sqrt(this.stiffness * this.mass) / step
    this.loadDamping = LOAD_DAMPING / step
  }

  /** Fastest rate [rad/s] under a load of up to `force` [N]. */
  fastest(force: f64): f64 {
    const loaded: f64 = (Math.max(this.raise, this.lower) * force) / (LOAD_REACH * this.mass)
    const springs: f64 = Math.max(Math.sqrt(this.stiffness / this.mass), Math.sqrt(loaded))
    return Math.max(springs, Math.max(this.viscous / this.mass, loaded * LOAD_DAMPING))
  }

  /** Bristles bent to the same force as under the constants before, as far as the present ones allow. */
  settle(): void {
    const s = this.state
    if (s.stiffness > 0) {
      const most: f64 = ((1 + ROUNDING) * (this.coulomb + this.rise)) / this.stiffness
      const bristle: f64 = s.bristle * (s.stiffness / this.stiffness)
      s.bristle = Math.max(-most, Math.min(most, bristle))
    }
    s.stiffness = this.stiffness
  }

  /** Friction force [N] against `speed` [m/s] under `load` [N], positive where the load pushes the axis back. */
  force(speed: f64, load: f64): f64 {
    const move: f64 = speed * this.step
    const path: f64 = move < 0 ? -move : move
    const level: f64 = this.coulomb + this.rise / (1 + speed * speed * this.stribeck)
    const old: f64 = this.state.bristle
    const bristle: f64 = ((old + move) * level) / (level + this.stiffness * path + TINY)
    this.state.bristle = bristle
    const own: f64 = this.stiffness * bristle + this.damping * (bristle - old) + this.viscous * speed
    return this.raise + this.lower === 0 ? own : own + this.loaded(move, path, load)
  }

  private loaded(move: f64, path: f64, load: f64): f64 {
    const old: f64 = this.state.loadBristle
    const bristle: f64 = ((old + move) * LOAD_REACH) / (LOAD_REACH + path)
    this.state.loadBristle = bristle
    const share: f64 = bristle * load > 0 ? this.raise : this.lower
    const size: f64 = load < 0 ? -load : load
    return ((share * size) / LOAD_REACH) * (bristle + this.loadDamping * (bristle - old))
  }
}
