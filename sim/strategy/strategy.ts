/** What is said of a strategy outside the compiled core: how it is filled from a scenario, and what its setting means. */

import type { Work } from '../job/job.ts'
import type { Edit, Scenario, StrategyId } from '../scenario/index.ts'
import type { Machine } from './machine.ts'
import type { MachineId } from './machine-id.ts'

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

/** Where searches look for help, told in this order. */
export interface SearchKeys {
  /** Settings that a person changes alone. */
  settings: readonly string[]
  /** Gains of its loops. */
  gains: readonly string[]
  /** The rate of a loop of its own, which divides the servo's; null: it has none. */
  rate: string | null
  /** For a setting that stands at 0: a first value that is felt. */
  first: Readonly<Record<string, (scenario: Scenario) => number>>
}

/** Causes that a strategy itself has, and the edits by which a counter-run takes each away; none where it has no such cause. */
export interface OwnCauses {
  /** It sees contact late. */
  detection(scenario: Scenario): Edit[]
  /** The integral of its loop winds up. */
  windup(scenario: Scenario): Edit[]
  /** It holds the position of a stop instead of pressing. */
  stopping(scenario: Scenario): Edit[]
  /** It presses no further than its move goes. */
  travel(scenario: Scenario): Edit[]
  /** It stands still where too little is asked of it. */
  deadband(scenario: Scenario): Edit[]
}

/** What a drive counts in units of its own: speed and acceleration by the sample, times in samples, shares shifted as gains are. */
export type DriveQuantity = 'current' | 'length' | 'speed' | 'acceleration' | 'force' | 'time' | 'share'

/** A row of the settings sheet. */
export interface SheetRow {
  path: string
  label: string
  unit: string
  /** What its value is, or, for a gain, gives. */
  gives: DriveQuantity
  /** For a gain: the error that it multiplies. */
  error?: DriveQuantity
  /** For a gain that sums or takes differences: over samples of which loop, +1 or −1. */
  over?: { loop: 'servo' | 'force'; power: 1 | -1 }
}

/** How what belongs to it is drawn. Colours are of Okabe and Ito's colour-blind-safe set; `text` is dark enough for words. */
export interface Look {
  /** Strokes and gaps of its lines [px]; none: solid. */
  dash: readonly number[]
  border: 'solid' | 'dashed' | 'dotted'
  light: { line: string; text: string }
  dark: { line: string; text: string }
}

/** What a setting means on an axis, for the question which axis suits; efforts [N or N·m], of a grip at one contact. */
export interface AxisFacts {
  openLoop: boolean
  backDrivable: boolean
  wanted: number
  /** With the continuous current, and where the output first meets what stops it; null: nothing does. */
  continuous: number
  impact: number | null
  /** Most that the work takes; Infinity: any. */
  limit: number
  /** Share of the wanted effort that friction hides, and whether a current still tells it. */
  share: number
  readable: boolean
}

/** Why a setting does or does not mean the force that it says. */
export type Ground =
  | { kind: 'fixed current' | 'stalled rotor' | 'gauge and give' | 'gauge and lock' }
  | { kind: 'hidden' | 'readable'; share: number }
  | { kind: 'impact above wanted'; impact: number; wanted: number }
  | { kind: 'impact below wanted'; impact: number; share: number }
  | { kind: 'too weak'; continuous: number; wanted: number }
  | { kind: 'impact damages'; impact: number; limit: number }

/** A strategy as the registry lists it. */
export interface StrategyKind<Driven extends Machine = Machine> {
  id: StrategyId
  label: string
  /** One sentence on what it does. */
  summary: string
  /** Its half in the compiled core, and how that is filled from a scenario. */
  machine: MachineId
  fill(machine: Driven, scenario: Scenario, work: Work): void
  /** Works with a force gauge. */
  sensed: boolean
  /** Path of the setting that means newtons, its unit, and what stands before it in a line. */
  setting: { path: string; label: string; unit: string; brief: string }
  /** The setting that should give a wanted grip force at one contact [N]. */
  settingFor(scenario: Scenario, force: number): number
  /** The grip force that the present setting means. */
  forceOf(scenario: Scenario): ForceBand
  /** Edits that put its setting to a value, wherever it presses with it. */
  set(value: number): Edit[]
  search: SearchKeys
  causes: OwnCauses
  /** What it takes for contact: where it engages before the part, that was mistaken, or its limit does not carry the jaws there. */
  feels: 'effort' | 'gauge' | 'limit'
  ground(facts: AxisFacts): Ground
  /** Its rows of the settings sheet. */
  sheet: readonly SheetRow[]
  look: Look
}
