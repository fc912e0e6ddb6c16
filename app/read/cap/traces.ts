/** The columns of a closure, which the store keeps as those of a grip. */
import type { Traces } from '../../../sim/index.ts'

type Name = 'time' | 'torque' | 'threadTorque' | 'angle' | 'preload' | 'travel' | 'current'

export const capTraces = (traces: Traces) => traces as unknown as Record<Name, Float64Array>
