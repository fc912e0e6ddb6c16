/** The constants of an axis and of the arm that carries it, from their part of the scenario. */
import { numbers } from '../core/native.ts'
import type { Actuator, ArmMove, Scenario } from '../scenario/index.ts'
import { ACROSS, ALONG, Arm, GRAVITY, MOVE_SIZE, moveAcceleration, UP } from './arm.ts'
import { Axis } from './axis.ts'
import { Heat } from './heat.ts'
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

/** Factor on the force constant where the magnets are at `temperature` [°C]. */
export function fluxAt({ magnetCoefficient }: Actuator['motor']['thermal'], temperature: number): number {
  const heat = new Heat()
  heat.magnetCoefficient = magnetCoefficient
  heat.state.housing = temperature
  heat.settle()
  return heat.flux
}

/** Force at the output for each ampere [N/A] with the magnets at a temperature [°C]: that of what is around the motor, if left out. */
export const forcePerAmpereAt = (actuator: Actuator, magnets = actuator.motor.thermal.ambient): number =>
  axisOf(actuator).forcePerAmpere * fluxAt(actuator.motor.thermal, magnets)

export const DIRECTIONS: Record<ArmMove['axis'], number> = { along: ALONG, across: ACROSS, up: UP }

export function armOf(arm: Scenario['arm']): Arm {
  const made = new Arm()
  fillArm(made, arm)
  return made
}

/** Acceleration of one move at time `t` [m/s²]. */
export const accelerationOf = ({ start, acceleration, duration, jerk }: ArmMove, t: number) =>
  moveAcceleration(t - start, acceleration, duration, jerk)

/** `room` is how many more moves may be added later. */
export function fillArm(arm: Arm, { moves, gravity }: Scenario['arm'], room = 0): void {
  arm.gravityAlong = gravity === 'along' ? GRAVITY : 0
  arm.gravityDown = gravity === 'across' ? GRAVITY : 0
  arm.count = moves.length
  arm.moves = numbers(MOVE_SIZE * (moves.length + room))
  moves.forEach((move, n) => {
    arm.moves.set([move.start, DIRECTIONS[move.axis], move.acceleration, move.duration, move.jerk], MOVE_SIZE * n)
  })
}
