import type { Scenario } from '../../scenario/index.ts'

/** Current with which a clamp presses [A]. */
export const clampLimit = ({ servo, strategies }: Pick<Scenario, 'servo' | 'strategies'>) =>
  Math.min(strategies.currentClamp.limit, servo.currentLimit)
