/** What a rule between keys is made of. */

import type { Fault } from './fault.ts'
import type { QuantitySchema } from './quantity.ts'
import type { Scenario } from './schema/index.ts'

export interface Rule {
  reads: string[]
  check(scenario: Scenario): Fault[]
}

export const rule = (
  reads: string[],
  holds: (scenario: Scenario) => boolean,
  given: (scenario: Scenario) => string,
  allowed: (scenario: Scenario) => string,
): Rule => ({
  reads,
  check: (scenario) =>
    holds(scenario) ? [] : [{ path: reads[0] ?? '', given: given(scenario), allowed: allowed(scenario) }],
})

/** `a` is a whole multiple of `b`, allowing for the rounding of decimal numbers. */
export function divides(b: number, a: number): boolean {
  const ratio = a / b
  return Math.abs(ratio - Math.round(ratio)) < 1e-9 * ratio && Math.round(ratio) >= 1
}

/** A rate near the wanted one, within the range of its `own` schema, that divides `rate`; a round number where there is one. */
export function nearestDivisor(wanted: number, rate: number, own: object): number {
  const { minimum, maximum } = own as QuantitySchema
  const parts = Math.max(1, Math.round(rate / wanted), Math.ceil(rate / maximum))
  for (let off = 0; off <= parts; off++) {
    for (const n of [parts + off, parts - off]) {
      const part = rate / n
      if (rate % n === 0 && part >= minimum && part <= maximum) return part
    }
  }
  return rate / parts
}
