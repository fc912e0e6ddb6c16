/**
 * Current of a setting ↔ grip force at one contact, on an axis that closes slowly:
 * K·(1 + α·(T − T_ref))·(I − I_0) = contacts·F·(1 + raise) + friction. The current loop brings the measured current to the one that is
 * set, so an offset I_0 of the measurement is missing in the winding; the magnets of a motor from cold are as warm as what is around it.
 * At rest the same current stands for any force between friction against the jaw and friction with it.
 */
import { dutyTemperatures } from '../axis/cooling.ts'
import { forcePerAmpereAt } from '../axis/flux.ts'
import { axisOf } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import type { ForceBand } from './strategy.ts'

/** Current [A] that presses each contact with `force` [N] while the jaw still creeps on, the motor from cold. */
export function currentFor(scenario: Scenario, force: number): number {
  const axis = axisOf(scenario.actuator)
  const load = jobOf(scenario).workOf(scenario).perEffort * force * (1 + axis.raise)
  return (
    (load + scenario.actuator.transmission.coulomb) / forcePerAmpereAt(scenario.actuator) + scenario.drive.currentOffset
  )
}

/**
 * Force at each contact [N] that a set current [A] means: expected and most with a motor from cold, least with one as warm as the duty
 * makes it with that current all along the run.
 */
export function forceBand(scenario: Scenario, current: number): ForceBand {
  const axis = axisOf(scenario.actuator)
  const { coulomb, breakaway } = scenario.actuator.transmission
  const perEffort = jobOf(scenario).workOf(scenario).perEffort
  const carried = current - scenario.drive.currentOffset
  const push = forcePerAmpereAt(scenario.actuator) * carried
  const warm = forcePerAmpereAt(scenario.actuator, warmMagnets(scenario, carried)) * carried
  const against = (force: number, friction: number) => Math.max(0, (force - friction) / (perEffort * (1 + axis.raise)))
  return {
    expected: against(push, coulomb),
    least: against(warm, breakaway),
    most: axis.lower < 1 ? Math.max(0, push + breakaway) / (perEffort * (1 - axis.lower)) : null,
  }
}

/** [°C]; a single grip leaves them as they are. */
function warmMagnets({ actuator, run }: Scenario, current: number): number {
  const { thermal, resistance } = actuator.motor
  if (run.cycle === null) return thermal.ambient
  return dutyTemperatures(thermal, resistance, current, run.duration / run.cycle).housing
}
