/** The few figures of an axis on which tuning rules work, from the scenario. */
import { contactsOf } from '../../job/grip/geometry.ts'
import { inSeries, jawStiffness } from '../../job/grip/statics.ts'
import type { Scenario } from '../../scenario/index.ts'
import { type PlantModel, plantModel } from '../plant.ts'
import { type Contact, type WorkingPointOptions, workingPoint } from '../working-point.ts'

export interface AxisFigures {
  plant: PlantModel
  /** Motor side and jaw together [kg]. */
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
  const mass = plant.mass + plant.jawMass
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

/** Gauge reading for each metre that the motor side travels slowly [N/m], from the softest to the stiffest part. */
export function forceSlopes(scenario: Scenario, options: WorkingPointOptions = {}) {
  const at = (id: 'softest' | 'nominal' | 'stiffest') =>
    slopeOf(scenario, workingPoint(scenario, id, options).contact as Contact)
  return { softest: at('softest'), nominal: at('nominal'), stiffest: at('stiffest') }
}

/** The same of one contact. */
export function slopeOf(scenario: Scenario, contact: Contact): number {
  const jaw = jawStiffness(scenario, contact)
  const load = inSeries(jaw, scenario.actuator.transmission.stiffness)
  return ((1 + scenario.sensors.gauge.gainError) * load) / contactsOf(scenario)
}
