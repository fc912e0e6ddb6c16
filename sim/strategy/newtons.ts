/**
 * Current at rest ↔ grip force at one contact, on an axis that closes slowly: K·I = contacts·F·(1 + raise) + friction.
 * At rest the same current stands for any force between friction against the jaw and friction with it.
 */
import { axisOf } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import type { ForceBand } from './strategy.ts'

/** Current [A] that presses each contact with `force` [N] while the jaw still creeps on. */
export function currentFor(scenario: Scenario, force: number): number {
  const axis = axisOf(scenario.actuator)
  return (
    (jobOf(scenario).workOf(scenario).perEffort * force * (1 + axis.raise) + scenario.actuator.transmission.coulomb) /
    axis.forcePerAmpere
  )
}

/** Force at each contact [N] that a current [A] means. */
export function forceBand(scenario: Scenario, current: number): ForceBand {
  const axis = axisOf(scenario.actuator)
  const { coulomb, breakaway } = scenario.actuator.transmission
  const perEffort = jobOf(scenario).workOf(scenario).perEffort
  const push = axis.forcePerAmpere * current
  const against = (friction: number) => Math.max(0, (push - friction) / (perEffort * (1 + axis.raise)))
  return {
    expected: against(coulomb),
    least: against(breakaway),
    most: axis.lower < 1 ? (push + breakaway) / (perEffort * (1 - axis.lower)) : null,
  }
}
