import { Block } from '../../../core/block.ts'

/** How the elastic force of the whole part grows with its flattening e [m]: F = K·f(e). */
export abstract class ContactLaw extends Block {
  /** f(e) = e: in series with a pad it has a closed form. */
  abstract proportional(): bool
  /** f(e) and f'(e), e ≥ 0. */
  abstract shape(e: f64): f64
  abstract slope(e: f64): f64
  /** The e at which f(e) = value. */
  abstract inverse(value: f64): f64
  /** The e ≥ 0 that solves stiffness·f(e) + spring·e = load, starting from a guess; load > 0. */
  abstract balance(stiffness: f64, spring: f64, load: f64, guess: f64): f64
}
