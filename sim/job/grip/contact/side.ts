/**
 * One contact: a pad in series with half the part. With squeeze s of the part's half, F = K·f(2s)·(1 + λ·2ṡ), never below
 * zero (Hunt and Crossley, J. Applied Mechanics 42, 1975). A share φ of the elastic force fades in a Maxwell branch,
 * q' = (q + φ·ΔFe)/(1 + dt/τ); above the yield force a dent grows at constant force; a broken part keeps a small stiffness.
 */
import { Block, State } from '../../../core/block.ts'
import type { ContactLaw } from './law.ts'
import { lawOf } from './laws.ts'
import { Linear } from './linear.ts'

/** Stiffness of a broken part over that of the whole one; common practice, no source. */
export const RESIDUAL: f64 = 0.02

class SideState extends State {
  /** Lasting flattening of the whole part at this side [m]. */
  dent: f64 = 0
  /** Present flattening [m] and elastic force [N] of the part. */
  flattening: f64 = 0
  elastic: f64 = 0
  /** What the part's tangent stiffness is reckoned from [N]. */
  carried: f64 = 0
  /** Force of the branch that fades [N]. */
  branch: f64 = 0
}

export class Side extends Block {
  exponent: f64 = 1
  /** K of the whole part [N/m^n], pad [N/m], 2λ [s/m], φ, τ [s], yield force [N] (Infinity: none) */
  wholeStiffness: f64 = 1
  pad: f64 = 1
  damping: f64 = 0
  share: f64 = 0
  relaxationTime: f64 = 1
  wholeYield: f64 = Infinity
  readonly state: SideState = new SideState()
  /** 1/(1 + dt/τ) */
  fade: f64 = 1
  /** The same of the part as it is, as `settle` leaves them; pad and part as one spring, and the part's share of the rate. */
  private stiffness: f64 = 1
  private yieldForce: f64 = Infinity
  private yieldFlattening: f64 = Infinity
  private series: f64 = 0
  private seriesDamping: f64 = 0
  private plain: f64 = 1
  private lasting: f64 = 0
  private law: ContactLaw = new Linear()

  setStep(step: f64): void {
    this.fade = 1 / (1 + step / this.relaxationTime)
  }

  /** Tangent stiffness of the whole contact [N/m] under `force` [N]: pad and half the part in series. */
  tangent(force: f64): f64 {
    const law = lawOf(this.exponent)
    const half: f64 = 2 * this.wholeStiffness * law.slope(law.inverse(force / this.wholeStiffness))
    return (half * this.pad) / (half + this.pad)
  }

  /** After a change of constants or of state from outside; the part is whole or broken. */
  settle(broken: bool): void {
    this.law = lawOf(this.exponent)
    this.stiffness = broken ? this.wholeStiffness * RESIDUAL : this.wholeStiffness
    this.yieldForce = broken ? Infinity : this.wholeYield
    this.yieldFlattening =
      this.wholeYield < Infinity ? this.law.inverse(this.wholeYield / this.wholeStiffness) : Infinity
    this.lasting = this.share > 0 || this.wholeYield < Infinity || this.state.dent > 0 ? 1 : 0
    this.plain = this.law.proportional() && this.lasting === 0 ? 1 : 0
    this.combine()
  }

  /** Force [N] for pad and part overlapping by `squeeze` [m], growing at `rate` [m/s]. */
  // @inline
  step(squeeze: f64, rate: f64): f64 {
    if (this.plain === 0) return this.bend(squeeze, rate)
    if (squeeze <= 0) return 0
    const force: f64 = this.series * squeeze * (1 + this.seriesDamping * rate)
    return force > 0 ? force : 0
  }

  private bend(squeeze: f64, rate: f64): f64 {
    return this.damped(this.lasting > 0 ? this.lastingForce(squeeze) : this.springForce(squeeze), rate)
  }

  /** The part breaks: what is left is soft. */
  crack(): void {
    const s = this.state
    this.stiffness *= RESIDUAL
    this.yieldForce = Infinity
    s.branch = 0
    s.elastic = this.stiffness * this.law.shape(s.flattening)
    this.combine()
  }

  /** Elastic force of part and pad [N]. */
  private springForce(squeeze: f64): f64 {
    const s = this.state
    if (squeeze <= 0) {
      s.flattening = 0
      s.elastic = 0
      return 0
    }
    const e: f64 = this.law.balance(this.stiffness, 0.5 * this.pad, this.pad * squeeze, s.flattening)
    s.flattening = e
    s.elastic = this.stiffness * this.law.shape(e)
    s.carried = s.elastic
    return s.elastic
  }

  /** The same of a part that remembers: one that relaxes or dents. */
  private lastingForce(squeeze: f64): f64 {
    const s = this.state
    const overlap: f64 = squeeze - 0.5 * s.dent
    if (overlap <= 0) {
      this.relax(0)
      s.flattening = 0
      return 0
    }
    const held: f64 = 1 - this.share + this.share * this.fade
    const past: f64 = (s.branch - this.share * s.elastic) * this.fade
    const load: f64 = this.pad * overlap - past
    let e: f64 = load > 0 ? this.law.balance(held * this.stiffness, 0.5 * this.pad, load, s.flattening) : 0
    let elastic: f64 = this.stiffness * this.law.shape(e)
    if (elastic > this.yieldForce) {
      elastic = this.yieldForce
      e = this.yieldFlattening
      const dent: f64 = 2 * (squeeze - (held * elastic + past) / this.pad) - e
      if (dent > s.dent) s.dent = dent
    }
    s.flattening = e
    this.relax(elastic)
    s.carried = held * elastic
    return (1 - this.share) * elastic + s.branch
  }

  /** Hunt–Crossley damping on the part's share of the rate: its tangent stiffness is n·elastic/e. A contact cannot pull. */
  private damped(force: f64, rate: f64): f64 {
    if (force <= 0) return 0
    const spring: f64 = this.pad * this.state.flattening
    const total: f64 = force * (1 + (this.damping * rate * spring) / (spring + 2 * this.exponent * this.state.carried))
    return total > 0 ? total : 0
  }

  /** The closed form of a proportional law: K and pad in series, and the part's share of the rate. */
  private combine(): void {
    this.series = (this.stiffness * this.pad) / (this.stiffness + 0.5 * this.pad)
    this.seriesDamping = (this.damping * this.pad) / (this.pad + 2 * this.stiffness)
  }

  private relax(elastic: f64): void {
    const s = this.state
    s.branch = (s.branch + this.share * (elastic - s.elastic)) * this.fade
    s.elastic = elastic
  }
}
