/** The traces that roll. */
import { type Channel, type Scenario, type StrategyId, strategyOf } from '../../../sim/index.ts'
import type { Quantity } from '../../read/units.ts'

export interface Panel {
  label: string
  quantity: Quantity
  height: number
  /** The channel that matters, and a thin one behind it. That has no name at its end, where the two would keep changing places. */
  channel: Channel
  behind: Channel
}

export const PANELS: Panel[] = [
  { label: 'Grip force', quantity: 'force', height: 150, channel: 'force', behind: 'farForce' },
  { label: 'Current', quantity: 'current', height: 80, channel: 'current', behind: 'command' },
  { label: 'Jaw speed', quantity: 'speed', height: 96, channel: 'speed', behind: 'wantedSpeed' },
]

/** Least span of a panel's values, SI: what the job asks of it, so that the noise of a plant at rest looks as small as it is. */
export function calmOf({ quantity }: Panel, scenario: Scenario, strategy: StrategyId): number {
  if (quantity === 'force') return strategyOf(strategy).forceOf(scenario).expected
  if (quantity === 'current') return CALM_CURRENT * scenario.servo.currentLimit
  return scenario.approach.speed
}

/** Share of the limit that the servo keeps. */
const CALM_CURRENT = 0.2
