import type { Scenario } from '../../../sim/index.ts'

/** Exponent of the contact law, in which units such as N/m^n are told; only a grip has one. */
export const exponentOf = ({ job, part }: Scenario): number => (job === 'grip' ? part.exponent : 1)
