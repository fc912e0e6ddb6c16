/** The columns of a press, which the store keeps as those of a grip. */
import type { Traces } from '../../../sim/index.ts'

type Name = 'time' | 'force' | 'depth' | 'jointForce' | 'shoulderForce' | 'travel' | 'current'

export const tracesOf = (traces: Traces) => traces as unknown as Record<Name, Float64Array>
