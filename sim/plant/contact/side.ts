/**
 * One contact: a pad in series with half the part. With squeeze s of the part's half, F = K·f(2s)·(1 + λ·2ṡ), never below
 * zero (Hunt and Crossley, J. Applied Mechanics 42, 1975). A share φ of the elastic force fades in a Maxwell branch,
 * q' = (q + φ·ΔFe)/(1 + dt/τ); above the yield force a dent grows at constant force; a broken part keeps a small stiffness.
 */
import { type ContactLaw, lawOf } from './law.ts'

export interface SideOptions {
  exponent: number
  /** K [N/m^n], pad [N/m], λ [s/m], φ, τ [s], yield force [N] (Infinity: none), step [s] */
  stiffness: number
  padStiffness: number
  damping: number
  relaxationFraction: number
  relaxationTime: number
  yieldForce: number
  step: number
}

/** Stiffness of a broken part over that of the whole one; common practice, no source. */
export const RESIDUAL = 0.02

export class Side {
  /** Lasting flattening of the whole part at this side [m]. */
  dent = 0
  private readonly law: ContactLaw
  private stiffness: number
  private readonly pad: number
  private readonly halfPad: number
  private readonly twiceExponent: number
  private lasting: boolean
  private readonly proportional: boolean
  private series = 0
  private seriesDamping = 0
  private readonly damping: number
  private readonly share: number
  private readonly fade: number
  private yieldForce: number
  private yieldFlattening: number
  private flattening = 0
  private elastic = 0
  /** What the part's tangent stiffness is reckoned from [N]. */
  private carried = 0
  private squeeze = 0
  private rate = 0
  private force = 0
  private branch = 0

  constructor(options: SideOptions) {
    this.law = lawOf(options.exponent)
    this.stiffness = options.stiffness
    this.pad = options.padStiffness
    this.halfPad = 0.5 * options.padStiffness
    this.twiceExponent = 2 * options.exponent
    this.lasting = options.relaxationFraction > 0 || options.yieldForce < Infinity
    this.damping = 2 * options.damping
    this.share = options.relaxationFraction
    this.fade = 1 / (1 + options.step / options.relaxationTime)
    this.yieldForce = options.yieldForce
    this.yieldFlattening =
      options.yieldForce < Infinity ? this.law.inverse(options.yieldForce / options.stiffness) : Infinity
    this.proportional = this.law.proportional
    this.combine()
  }

  /** Pad and part are one spring: `spring` says what `step` does, quicker. */
  get plain(): boolean {
    return this.proportional && !this.lasting
  }

  /** Force [N] of a plain side, in closed form. Small and without calls, so that the engine inlines it in the plant's step. */
  spring(squeeze: number, rate: number): number {
    if (squeeze <= 0) return 0
    const force = this.series * squeeze * (1 + this.seriesDamping * rate)
    return force > 0 ? force : 0
  }

  /** Force [N] for pad and part overlapping by `squeeze` [m], growing at `rate` [m/s]. */
  step(squeeze: number, rate: number): number {
    // Handed over in fields: a call that is not inlined would box each of these numbers.
    this.squeeze = squeeze
    this.rate = rate
    this.move()
    return this.force
  }

  private move(): void {
    if (this.lasting) this.force = this.damped(this.lastingForce())
    else if (this.proportional) this.force = this.spring(this.squeeze, this.rate)
    else this.force = this.damped(this.springForce())
  }

  /** Elastic force of part and pad [N]. */
  private springForce(): number {
    const { squeeze } = this
    if (squeeze <= 0) {
      this.flattening = 0
      this.elastic = 0
      return 0
    }
    const e = this.law.balance(this.stiffness, this.halfPad, this.pad * squeeze, this.flattening)
    this.flattening = e
    this.elastic = this.stiffness * this.law.shape(e)
    this.carried = this.elastic
    return this.elastic
  }

  /** The same of a part that remembers: one that relaxes or dents. */
  private lastingForce(): number {
    const { squeeze } = this
    const overlap = squeeze - 0.5 * this.dent
    if (overlap <= 0) {
      this.relax(0)
      this.flattening = 0
      return 0
    }
    const held = 1 - this.share + this.share * this.fade
    const past = (this.branch - this.share * this.elastic) * this.fade
    const load = this.pad * overlap - past
    let e = load > 0 ? this.law.balance(held * this.stiffness, this.halfPad, load, this.flattening) : 0
    let elastic = this.stiffness * this.law.shape(e)
    if (elastic > this.yieldForce) {
      elastic = this.yieldForce
      e = this.yieldFlattening
      const dent = 2 * (squeeze - (held * elastic + past) / this.pad) - e
      if (dent > this.dent) this.dent = dent
    }
    this.flattening = e
    this.relax(elastic)
    this.carried = held * elastic
    return (1 - this.share) * elastic + this.branch
  }

  /** Hunt–Crossley damping on the part's share of the rate: its tangent stiffness is n·elastic/e. A contact cannot pull. */
  private damped(force: number): number {
    if (force <= 0) return 0
    const spring = this.pad * this.flattening
    const total = force * (1 + (this.damping * this.rate * spring) / (spring + this.twiceExponent * this.carried))
    return total > 0 ? total : 0
  }

  /** As flattened, dented and relaxed as another one. */
  take(previous: Side): void {
    this.dent = previous.dent
    this.flattening = previous.flattening
    this.elastic = previous.elastic
    this.branch = previous.branch
    this.carried = previous.carried
    this.squeeze = previous.squeeze
    this.rate = previous.rate
    this.force = previous.force
    this.lasting ||= previous.dent > 0
  }

  /** The part breaks: what is left is soft. */
  crack(): void {
    this.stiffness *= RESIDUAL
    this.yieldForce = Infinity
    this.branch = 0
    this.elastic = this.stiffness * this.law.shape(this.flattening)
    this.combine()
  }

  /** The closed form of a proportional law: K and pad in series, and the part's share of the rate. */
  private combine(): void {
    this.series = (this.stiffness * this.pad) / (this.stiffness + this.halfPad)
    this.seriesDamping = (this.damping * this.pad) / (this.pad + 2 * this.stiffness)
  }

  private relax(elastic: number): void {
    this.branch = (this.branch + this.share * (elastic - this.elastic)) * this.fade
    this.elastic = elastic
  }
}
