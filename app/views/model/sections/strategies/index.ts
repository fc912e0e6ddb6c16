/** What each strategy does, one file each. */
import type { StrategyId } from '../../../../../sim/index.ts'
import type { Section } from '../../section.ts'
import { CURRENT_CLAMP } from './currentClamp.ts'
import { SENSED_FORCE } from './sensedForce.ts'
import { THRESHOLD_STOP } from './thresholdStop.ts'

export const STRATEGIES: Readonly<Record<StrategyId, Section[]>> = {
  'threshold-stop': THRESHOLD_STOP,
  'current-clamp': CURRENT_CLAMP,
  'sensed-force': SENSED_FORCE,
}
