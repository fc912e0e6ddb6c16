/**
 * A contact law says how the elastic force of the whole part grows with its flattening e [m]: F = K·f(e).
 * A new law is one file and one line in LAWS.
 */
import { hertz } from './hertz.ts'
import { linear } from './linear.ts'

export interface ContactLaw {
  exponent: number
  /** f(e) and f'(e), e ≥ 0. */
  shape(e: number): number
  slope(e: number): number
  /** The e at which f(e) = value. */
  inverse(value: number): number
  /** The e ≥ 0 that solves stiffness·f(e) + spring·e = load, starting from a guess; load > 0. */
  balance(stiffness: number, spring: number, load: number, guess: number): number
}

const LAWS: ContactLaw[] = [linear, hertz]

export function lawOf(exponent: number): ContactLaw {
  const law = LAWS.find((candidate) => candidate.exponent === exponent)
  if (!law) throw new RangeError(`no contact law with exponent ${exponent}`)
  return law
}
