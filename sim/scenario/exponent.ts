import type { Scenario } from './schema/index.ts'

/** Exponent of the contact law, in which units such as N/m^n are told; 1 for work that has no such law. */
export const exponentOf = (scenario: Scenario): number =>
  (scenario as Partial<Pick<Scenario, 'part'>>).part?.exponent ?? 1
