/** The registry of contact laws: a new one is one file and one line here. */
import { Hertz } from './hertz.ts'
import type { ContactLaw } from './law.ts'
import { Linear } from './linear.ts'

/** The law of an exponent. */
export function lawOf(exponent: f64): ContactLaw {
  if (exponent === 1) return new Linear()
  return new Hertz()
}
