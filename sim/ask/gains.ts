/** The gains that a strategy's loops work with. */
import type { StrategyId } from '../strategy/strategy.ts'

const POSITION = ['servo.kp', 'servo.ki', 'servo.kd']

export const GAINS: Record<StrategyId, readonly string[]> = {
  'threshold-stop': POSITION,
  'current-clamp': POSITION,
  'sensed-force': ['kp', 'ki', 'kd', 'velocity.kp', 'velocity.ki'].map((key) => `strategies.sensedForce.${key}`),
}
