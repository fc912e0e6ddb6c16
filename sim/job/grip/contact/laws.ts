/** The registry of contact laws: a new one is one file and one line here. */
import { Hertz } from './hertz.ts'
import type { ContactLaw } from './law.ts'
import { Linear } from './linear.ts'
import { PowerLaw } from './power-law.ts'

/** The law of an exponent, 1 to 2. Throws a RangeError where there is none. */
export function lawOf(exponent: f64): ContactLaw {
  if (exponent === 1) return new Linear()
  if (exponent === 1.5) return new Hertz()
  if (!(exponent > 1 && exponent <= 2)) throw new RangeError('no contact law with this exponent')
  const law = new PowerLaw()
  law.exponent = exponent
  return law
}
