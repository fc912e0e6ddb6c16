/** What the model leaves out or makes simple, and how it can be bounded for a scenario. */
import { jobOf } from '../../job/index.ts'
import { type Edit, readPath, type Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'

/** Where it sits on the power's way. */
export type Element =
  | 'bridge'
  | 'motor'
  | 'transmission'
  | 'jaws'
  | 'part'
  | 'pads'
  | 'arm'
  | 'joint'
  | 'closure'
  | 'web'
  | 'heat'
  | 'measuring'
  | 'drive'
  | 'stepping'

export interface BoundFigure {
  label: string
  /** SI; null: does not exist for this scenario. */
  value: number | null
  unit: string
  shown?: string
}

/** One change of the scenario that stands for what is not modelled. */
export interface Variant {
  label: string
  edits: Edit[]
}

/**
 * How far off it can be: from a closed form, from counter-runs of the simulator itself, or not known, with what to measure.
 * A closed form or a list of variants that comes out empty does not apply to the scenario; `without` says why.
 */
export type Bound =
  | {
      how: 'formula'
      /** On one line, for the command line; the page sets it from TeX of its own. */
      formula: string
      basis: string
      figures(scenario: Scenario, strategy: StrategyId): BoundFigure[]
      without?: string
    }
  | {
      how: 'runs'
      basis: string
      variants(scenario: Scenario, strategy: StrategyId): Variant[]
      without?: string
    }
  | { how: 'unknown'; measure: string }

export interface Simplification {
  id: string
  element: Element
  title: string
  /** What the model does, and what a real axis does instead. Quantities in these texts are as `textIn` reads them. */
  text: string
  bound: Bound
}

/** Units of the effort on the work, and of what the motor gives at the output. */
export function effortUnits(scenario: Scenario): { work: string; output: string } {
  const { effort, travel } = jobOf(scenario).output
  return { work: effort, output: travel === 'rad' ? 'N·m' : 'N' }
}

/** Keys set to multiples of what they are; none where a key is absent or zero. */
export function scaled(
  read: (path: string) => unknown,
  paths: readonly string[],
  factors: readonly (readonly [string, number])[],
): Variant[] {
  const known = paths.flatMap((path) => {
    const value = read(path)
    return typeof value === 'number' && value !== 0 ? [{ path, value }] : []
  })
  if (known.length === 0) return []
  return factors.map(([label, factor]) => ({
    label,
    edits: known.map(({ path, value }) => ({ path, value: value * factor })),
  }))
}

export const HALF_AND_DOUBLE = [
  ['halved', 0.5],
  ['doubled', 2],
] as const

export const FIFTHS = [
  ['a fifth lower', 0.8],
  ['a fifth higher', 1.2],
] as const

/** The same of a scenario's own keys. */
export const scaledKeys =
  (paths: readonly string[], factors: readonly (readonly [string, number])[]) =>
  (scenario: Scenario): Variant[] =>
    scaled((path) => readPath(scenario, path), paths, factors)
