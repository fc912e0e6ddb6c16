import type { Scenario } from '../../scenario/index.ts'

/** Time constant of the filter on the derivative of the force [s]; where none is set, that of the gauge. */
export const derivativeFilterOf = ({ strategies, sensors }: Pick<Scenario, 'strategies' | 'sensors'>): number =>
  strategies.sensedForce.derivativeFilter ?? 1 / sensors.gauge.bandwidth
