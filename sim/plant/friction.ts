/**
 * Friction of the axis, at the jaw coordinate: LuGre bristles (Canudas de Wit, Olsson, Åström, Lischinsky, IEEE Trans.
 * Automatic Control 40(3), 1995) with the Stribeck curve of Hess and Soom (1990), g(v) = Fc + (Fs − Fc)/(1 + (v/vs)²):
 * ż = v − σ0|v|z/g, F = σ0 z + σ1 ż + σ2 v; and, for thread or gear, a part that is a share of the load once a second bristle
 * has been carried over its reach: żl = v − |v|·zl/reach. Its reach does not grow with the load, as a contact's tangential
 * stiffness grows with its normal force (Mindlin 1949). Bristles are updated implicitly, so they never pass their ends.
 */
export interface FrictionOptions {
  /** [N], [N], [m/s], [N·s/m], [N/m] */
  coulomb: number
  breakaway: number
  stribeckSpeed: number
  viscous: number
  bristleStiffness: number
}

/** Travel before loaded flanks slide [m], and the damping of that stretch as a time [s]; common practice, no source. */
export const LOAD_REACH = 2e-6
export const LOAD_DAMPING = 2e-4
/** Keeps 0/0 away where an axis has no friction at all. */
const TINY = 1e-300
/** A bristle may stand past its end by rounding alone. */
const ROUNDING = 1e-9

export class Friction {
  bristle = 0
  loadBristle = 0
  private readonly coulomb: number
  private readonly rise: number
  private readonly stribeck: number
  private readonly viscous: number
  private readonly stiffness: number
  private readonly damping: number
  private readonly raise: number
  private readonly lower: number
  private readonly loadDamping: number
  private readonly dt: number

  /**
   * `mass` [kg] is what the bristle holds: it damps that mode with σ1 = √(σ0·mass), damping ratio one half. `raise` and `lower`
   * are newtons of friction for each newton of load, moving against it and with it.
   */
  constructor(options: FrictionOptions, mass: number, raise: number, lower: number, step: number) {
    this.coulomb = options.coulomb
    this.rise = options.breakaway - options.coulomb
    this.stribeck = 1 / (options.stribeckSpeed * options.stribeckSpeed)
    this.viscous = options.viscous
    this.stiffness = options.bristleStiffness
    this.damping = Math.sqrt(options.bristleStiffness * mass) / step
    this.raise = raise
    this.lower = lower
    this.loadDamping = LOAD_DAMPING / step
    this.dt = step
  }

  /** Bristles bent to the same force as another one's, as far as the new friction allows. */
  take(previous: Friction): void {
    const most = ((1 + ROUNDING) * (this.coulomb + this.rise)) / this.stiffness
    const bristle = previous.bristle * (previous.stiffness / this.stiffness)
    this.bristle = Math.max(-most, Math.min(most, bristle))
    this.loadBristle = previous.loadBristle
  }

  /** Friction force [N] against `speed` [m/s] under `load` [N], positive where the load pushes the axis back. */
  force(speed: number, load: number): number {
    const move = speed * this.dt
    const path = move < 0 ? -move : move
    const level = this.coulomb + this.rise / (1 + speed * speed * this.stribeck)
    const old = this.bristle
    const bristle = ((old + move) * level) / (level + this.stiffness * path + TINY)
    this.bristle = bristle
    const own = this.stiffness * bristle + this.damping * (bristle - old) + this.viscous * speed
    return this.raise + this.lower === 0 ? own : own + this.loaded(move, path, load)
  }

  private loaded(move: number, path: number, load: number): number {
    const old = this.loadBristle
    const bristle = ((old + move) * LOAD_REACH) / (LOAD_REACH + path)
    this.loadBristle = bristle
    const share = bristle * load > 0 ? this.raise : this.lower
    const size = load < 0 ? -load : load
    return ((share * size) / LOAD_REACH) * (bristle + this.loadDamping * (bristle - old))
  }
}
