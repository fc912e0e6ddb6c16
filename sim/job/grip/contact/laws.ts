/** The registry of contact laws: a new one is one file and one line here. */
import { Hertz } from './hertz.ts'
import type { ContactLaw } from './law.ts'
import { Linear } from './linear.ts'

/** The law of an exponent. Throws a RangeError where there is none. */
export function lawOf(exponent: f64): ContactLaw {
  if (exponent === 1) return new Linear()
  if (exponent === 1.5) return new Hertz()
  throw new RangeError('no contact law with this exponent')
}
