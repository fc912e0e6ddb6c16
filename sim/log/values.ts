/** Values put into a scenario: where a fit starts, and where it ends. */
import { type Edit, editScenario, quantityAt, Refusal, readPath, type Scenario } from '../scenario/index.ts'
import { NoFit } from './facts.ts'
import type { InverseModel } from './inverse.ts'
import { logOf } from './jobs/index.ts'
import { BREAKAWAY, COULOMB, DELAY } from './replayed.ts'
import { inverseEdits, type LaidLog } from './stages.ts'

export const VISCOUS_BACK = 'actuator.transmission.viscousBack'
export const COULOMB_BACK = 'actuator.transmission.coulombBack'
export const BRISTLE = 'actuator.transmission.bristleStiffness'

/** What the logs say at once, before anything is simulated. */
export function startEdits(scenario: Scenario, logs: readonly LaidLog[], inverse: InverseModel | null): Edit[] {
  const touching = logs.find(({ setup }) => setup.contact)
  const moving = inverse ? inverseEdits(scenario, inverse) : []
  const coulomb = moving.find(({ path }) => path === COULOMB)
  const { breakaway, coulomb: before } = scenario.actuator.transmission
  return [
    ...moving,
    ...(coulomb ? [{ path: BREAKAWAY, value: risen(coulomb.value as number, breakaway - before) }] : []),
    ...(touching ? logOf(scenario).edits(scenario, touching) : []),
  ]
}

/** Break-away friction so much above Coulomb friction, never below it by rounding. */
const risen = (coulomb: number, rise: number) => Math.max(coulomb, coulomb + rise)

/** Values beyond their ranges are taken to the ends of these. Throws a Refusal where the rules of the format forbid the others. */
export function changed(scenario: Scenario, edits: readonly Edit[]): Scenario {
  const inside = edits.map(({ path, value }) => {
    const { minimum, maximum } = quantityAt(scenario, path)!
    return { path, value: Math.min(maximum, Math.max(minimum, value as number)) }
  })
  const made = editScenario(scenario, inside)
  if (!made.ok) throw new Refusal(made.faults[0]!)
  return made.scenario
}

/** A key of friction by direction that is left out stands for that of the other direction. */
export function valueNow(scenario: Scenario, path: string): number | null {
  const value = readPath(scenario, path)
  if (typeof value === 'number') return value
  if (path === COULOMB_BACK) return scenario.actuator.transmission.coulomb
  if (path === VISCOUS_BACK) return scenario.actuator.transmission.viscous
  return null
}

/** With every free key written out. */
export const present = (scenario: Scenario, paths: readonly string[]): Scenario =>
  changed(
    scenario,
    paths.flatMap((path) => {
      const value = path === DELAY ? null : valueNow(scenario, path)
      if (path !== DELAY && value === null) throw new NoFit({ kind: 'no-quantity', path })
      return value === null || readPath(scenario, path) === value ? [] : [{ path, value }]
    }),
  )

export function withValues(scenario: Scenario, paths: readonly string[], values: readonly number[]): Scenario {
  const edits = paths.flatMap((path, p) => (path === DELAY ? [] : [{ path, value: values[p]! }]))
  const { breakaway, coulomb } = scenario.actuator.transmission
  const follows = edits.find(({ path }) => path === COULOMB)
  const own = edits.find(({ path }) => path === BREAKAWAY)
  if (follows && own) own.value = Math.max(own.value, follows.value)
  if (follows && !own) edits.push({ path: BREAKAWAY, value: risen(follows.value, breakaway - coulomb) })
  return changed(scenario, edits)
}
