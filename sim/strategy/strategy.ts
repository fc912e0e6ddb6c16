/** What is said of a strategy outside the compiled core: how it is filled from a scenario, and what its setting means. */

import type { Work } from '../job/job.ts'
import type { Scenario, StrategyId } from '../scenario/index.ts'
import type { Machine } from './machine.ts'
import type { MachineId } from './machines.ts'

export type { StrategyId }

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
  /** Its half in the compiled core, and how that is filled from a scenario. */
  machine: MachineId
  fill(machine: Machine, scenario: Scenario, work: Work): void
  /** Works with a force gauge. */
  sensed: boolean
  /** Path of the setting that means newtons, and its unit. */
  setting: { path: string; label: string; unit: string }
  /** The setting that should give a wanted grip force at one contact [N]. */
  settingFor(scenario: Scenario, force: number): number
  /** The grip force that the present setting means. */
  forceOf(scenario: Scenario): ForceBand
}
