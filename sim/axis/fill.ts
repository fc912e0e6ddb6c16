/** The constants of an axis, from their part of the scenario. */
import type { Actuator } from '../scenario/index.ts'
import { Axis } from './axis.ts'
import { axisOf, isOpenLoop } from './reflect.ts'

/** What a job says of the output: its mass [kg], and the stroke [m] of actuator and of what it moves; kg·m² and rad where it turns. */
export interface Output {
  mass: number
  stroke: number
  reach: number
  /** It turns or runs on for ever, without stops. */
  endless?: boolean
}

export function fillAxis(axis: Axis, actuator: Actuator, output: Output): void {
  const { motor, transmission: t } = actuator
  const seen = axisOf(actuator)
  axis.mass = seen.mass
  axis.linearMass = seen.linearMass
  axis.outputMass = output.mass
  axis.forcePerAmpere = seen.forcePerAmpere
  axis.peakCurrent = motor.peakCurrent
  axis.winding.inductance = motor.inductance
  axis.winding.resistance = motor.resistance
  axis.transmission.stiffness = t.stiffness
  axis.transmission.damping = t.damping
  axis.transmission.play = t.backlash / 2
  axis.stops.stroke = output.reach
  axis.stops.set(output.endless ? 0 : t.stiffness, output.mass)
  fillFriction(axis, actuator)
  fillCommutation(axis, actuator, output.stroke)
  fillHeat(axis, motor.thermal)
}

/** An axis as it stands at the start of a run. */
export function axisFilled(actuator: Actuator, output: Output): Axis {
  const axis = new Axis()
  fillAxis(axis, actuator, output)
  axis.settle()
  return axis
}

function fillFriction({ friction }: Axis, actuator: Actuator): void {
  const t = actuator.transmission
  const { mass, raise, lower, loadReach } = axisOf(actuator)
  friction.coulomb = t.coulomb
  friction.coulombBack = t.coulombBack ?? t.coulomb
  friction.rise = t.breakaway - t.coulomb
  friction.stribeck = 1 / (t.stribeckSpeed * t.stribeckSpeed)
  friction.viscous = t.viscous
  friction.viscousBack = t.viscousBack ?? t.viscous
  friction.stiffness = t.bristleStiffness
  friction.mass = mass
  friction.raise = raise
  friction.lower = lower
  friction.reach = loadReach
}

function fillCommutation({ commutation }: Axis, actuator: Actuator, stroke: number): void {
  const { motor } = actuator
  const { coggingForce, coggingPeriod, ripplePeriod, cyclePitch } = axisOf(actuator)
  commutation.coggingForce = coggingForce
  commutation.coggingPeriod = coggingPeriod
  commutation.perCog = 1 / coggingPeriod
  commutation.ripple = motor.ripple.share
  commutation.perRipple = 1 / ripplePeriod
  commutation.endLoss = 'endLoss' in motor ? motor.endLoss : 0
  commutation.perHalfStroke = 2 / stroke
  commutation.perCycle = isOpenLoop({ actuator }) ? 1 / cyclePitch : 0
}

function fillHeat({ heat }: Axis, thermal: Actuator['motor']['thermal']): void {
  heat.windingResistance = thermal.windingResistance
  heat.housingResistance = thermal.housingResistance
  heat.windingCapacity = thermal.windingTime / thermal.windingResistance
  heat.housingCapacity = thermal.housingTime / thermal.housingResistance
  heat.ambient = thermal.ambient
  heat.magnetCoefficient = thermal.magnetCoefficient
  heat.state.winding = thermal.ambient
  heat.state.housing = thermal.ambient
}
