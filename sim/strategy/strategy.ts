/** The one type behind every grip strategy: a small state machine that the servo asks for a current at each of its samples. */
import type { Scenario } from '../scenario/index.ts'
import type { Start } from './course.ts'

export type StrategyId = 'threshold-stop' | 'current-clamp' | 'sensed-force'

/** What the drive knows at a servo sample; SI, at the jaw coordinate. */
export interface Measured {
  time: number
  /** Encoder reading [m]. */
  position: number
  /** Gauge reading [N]; 0 for a strategy without a gauge. */
  force: number
}

export interface Strategy {
  /** Called once a servo period; returns the current command [A]. */
  tick(measured: Measured): number
  /** Where the profile is [m]. */
  readonly target: number
  /** Speed that the drive wants at the moment [m/s]. */
  readonly wantedSpeed: number
  /** When the strategy halted its move or took over [s]; NaN before. */
  readonly engaged: number
  /** Whether the command stands at its limit: −1, 0 or 1. */
  readonly saturated: number
  /** Speed as the drive measures it [m/s]. */
  readonly measuredSpeed: number
  /** Goes on where one of its own kind stands, with settings of its own; one that cannot starts anew. */
  take?(previous: Strategy): void
}

/**
 * Grip force at one contact [N] that a setting means: expected where friction opposes the closing jaw, least and most with
 * break-away friction against it and with it. `most` is null where a locked transmission sets no bound.
 */
export interface ForceBand {
  expected: number
  least: number
  most: number | null
}

/** A strategy as the registry lists it. */
export interface StrategyKind {
  id: StrategyId
  label: string
  /** One sentence on what it does. */
  summary: string
  /** Works with a force gauge. */
  sensed: boolean
  /** Path of the setting that means newtons, and its unit. */
  setting: { path: string; label: string; unit: string }
  /** The setting that should give a wanted grip force at one contact [N]. */
  settingFor(scenario: Scenario, force: number): number
  /** The grip force that the present setting means. */
  forceOf(scenario: Scenario): ForceBand
  /** Sets out from jaws that are open at time 0, or from another start. */
  create(scenario: Scenario, start?: Start): Strategy
}
