/** The few figures of an axis on which tuning rules work, from the scenario. */
import { jobOf } from '../../job/index.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { PlantModel } from '../axis-plant.ts'
import { plantModel } from '../plant.ts'
import {
  type Contact,
  type WorkingPointId,
  type WorkingPointOptions,
  workingPoint,
  workingPointsOf,
} from '../working-point.ts'

export interface AxisFigures {
  plant: PlantModel
  /** Motor side and output together, with what it carries along [kg]. */
  mass: number
  /** Acceleration for each ampere [m/s²/A], and viscous friction over mass [1/s]. */
  acceleration: number
  drag: number
  /** What stands between a servo sample and the current's effect, and the reading of speed [s]. */
  lags: { currentLoop: number; hold: number; difference: number; filter: number }
  /** Their sum [s]. */
  delay: number
}

export function axisFigures(scenario: Scenario): AxisFigures {
  const { servo, drive, actuator } = scenario
  const plant = plantModel(scenario, workingPoint(scenario, 'free'))
  const mass = plant.mass + plant.jawMass + plant.carried
  const lags = {
    currentLoop: 1 / drive.currentBandwidth,
    hold: 0.5 / servo.rate,
    difference: 0.5 / servo.rate,
    filter: servo.speedFilter,
  }
  return {
    plant,
    mass,
    acceleration: plant.forceConstant / mass,
    drag: actuator.transmission.viscous / mass,
    lags,
    delay: lags.currentLoop + lags.hold + lags.difference + lags.filter,
  }
}

/**
 * Gauge reading for each metre that the motor side travels slowly [N/m], from the softest to the stiffest work, and the least of any working
 * point. Null where there is nothing that could be pressed on.
 */
export function forceSlopes(scenario: Scenario, options: WorkingPointOptions = {}) {
  const points = workingPointsOf(scenario)
  if (!points.includes('nominal')) return null
  const at = (id: WorkingPointId) => {
    const { contact } = workingPoint(scenario, id, options)
    return contact ? slopeOf(scenario, contact) : Number.POSITIVE_INFINITY
  }
  const least = Math.min(...points.map(at))
  return { softest: at('softest'), nominal: at('nominal'), stiffest: at('stiffest'), least }
}

/** What the figures of an output are called, and their units. */
export function outputFigures({ job }: Scenario): Record<'mass' | 'force', [string, string]> {
  const turns = jobOf({ job }).output.travel === 'rad'
  return turns
    ? { mass: ['Moving inertia M', 'kg·m²'], force: ['Motor torque K', 'N·m/A'] }
    : { mass: ['Moving mass M', 'kg'], force: ['Motor force K', 'N/A'] }
}

/** The same of what a working point presses on. */
export function slopeOf(scenario: Scenario, contact: Contact): number {
  const load = besideTransmission(scenario, contact)
  return ((1 + scenario.sensors.gauge.gainError) * load) / jobOf(scenario).workOf(scenario).perEffort
}

/** What the motor side meets: the work with the transmission's give in series [N/m]. */
export function besideTransmission({ actuator }: Scenario, { against }: Contact): number {
  const { stiffness } = actuator.transmission
  return (against * stiffness) / (against + stiffness)
}
