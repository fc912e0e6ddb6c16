/** The axis beside that of the bench: under the same work, its gains and settings fitted anew to whatever is on the bench. */
import { type Checked, checkScenario, fitAxis, jobTaking, type Scenario, SETTINGS_ANYWHERE } from '../../sim/index.ts'
import { type Axis, useScenario } from './scenario.ts'

export interface Beside {
  axis: Axis
  /** The scenario with this axis, or why the two do not go together. */
  fitted: Checked
}

let last: { scenario: Scenario; beside: Beside } | null = null

/** The same object for the same scenario and axis; null: no axis stands beside. */
export function besideOf({ scenario, beside: axis }: { scenario: Scenario; beside: Axis | null }): Beside | null {
  if (!axis) return null
  if (last?.scenario !== scenario || last.beside.axis !== axis)
    last = { scenario, beside: { axis, fitted: fitAxis(scenario, axis.actuator) } }
  return last.beside
}

/** A scenario that has an axis and its title for a name, and nothing else of its own. Null: the axis is in no sound scenario. */
export function carrierOf({ title, actuator }: Axis): Scenario | null {
  const servo = { currentLimit: Math.min(1, actuator.motor.peakCurrent) }
  const job = jobTaking(actuator.kind)
  const checked = checkScenario({ job, name: title, actuator, servo, strategies: SETTINGS_ANYWHERE })
  return checked.ok ? checked.scenario : null
}

export const carriedBy = ({ name, actuator }: Scenario): Axis => ({ title: name, actuator })

export const useBeside = (): Beside | null => useScenario(besideOf)
