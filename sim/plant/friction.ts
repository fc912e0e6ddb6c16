/**
 * LuGre friction (Canudas de Wit, Olsson, Åström, Lischinsky, IEEE Trans. Automatic Control 40(3), 1995) with the
 * Stribeck curve of Hess and Soom (1990), g(v) = Fc + (Fs − Fc)/(1 + (v/vs)²), plus a part proportional to the load.
 * ż = v − σ0|v|z/g, F = σ0 z + σ1 ż + σ2 v. The bristle z [m] is updated implicitly, so it never passes g/σ0.
 */
export interface FrictionOptions {
  /** [N], [N], [m/s], [N·s/m], [N/m] */
  coulomb: number
  breakaway: number
  stribeckSpeed: number
  viscous: number
  bristleStiffness: number
}

/** Keeps 0/0 away where an axis has no friction at all. */
const TINY = 1e-300

export class Friction {
  bristle = 0
  private readonly coulomb: number
  private readonly rise: number
  private readonly stribeck: number
  private readonly viscous: number
  private readonly stiffness: number
  private readonly damping: number
  private readonly raise: number
  private readonly lower: number
  private readonly dt: number

  /** `mass` [kg] is what the bristle holds: it damps that mode with σ1 = √(σ0·mass), damping ratio one half. */
  constructor(options: FrictionOptions, mass: number, raise: number, lower: number, step: number) {
    this.coulomb = options.coulomb
    this.rise = options.breakaway - options.coulomb
    this.stribeck = 1 / (options.stribeckSpeed * options.stribeckSpeed)
    this.viscous = options.viscous
    this.stiffness = options.bristleStiffness
    this.damping = Math.sqrt(options.bristleStiffness * mass) / step
    this.raise = raise
    this.lower = lower
    this.dt = step
  }

  /** Friction force [N] against `speed` [m/s] under `load` [N], positive where the load pushes the axis back. */
  force(speed: number, load: number): number {
    const proportional = speed * load > 0 ? this.raise : this.lower
    const size = load < 0 ? -load : load
    const level = this.coulomb + this.rise / (1 + speed * speed * this.stribeck) + proportional * size
    const path = speed < 0 ? -speed : speed
    const old = this.bristle
    const bristle = ((old + speed * this.dt) * level) / (level + this.stiffness * path * this.dt + TINY)
    this.bristle = bristle
    return this.stiffness * bristle + this.damping * (bristle - old) + this.viscous * speed
  }
}
