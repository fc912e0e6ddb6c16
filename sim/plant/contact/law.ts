/**
 * A contact law says how the elastic force of the whole part grows with its flattening e [m]: F = K·f(e).
 * A new law is one class in a file of its own and one line in LAWS.
 */
import { Hertz } from './hertz.ts'
import { Linear } from './linear.ts'

export interface ContactLaw {
  /** f(e) = e: in series with a pad it has a closed form. */
  readonly proportional: boolean
  /** f(e) and f'(e), e ≥ 0. */
  shape(e: number): number
  slope(e: number): number
  /** The e at which f(e) = value. */
  inverse(value: number): number
  /** The e ≥ 0 that solves stiffness·f(e) + spring·e = load, starting from a guess; load > 0. */
  balance(stiffness: number, spring: number, load: number, guess: number): number
}

/** By exponent. */
const LAWS = new Map<number, new () => ContactLaw>([
  [1, Linear],
  [1.5, Hertz],
])

export function lawOf(exponent: number): ContactLaw {
  const Law = LAWS.get(exponent)
  if (!Law) throw new RangeError(`no contact law with exponent ${exponent}`)
  return new Law()
}
