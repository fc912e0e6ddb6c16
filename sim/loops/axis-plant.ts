/**
 * The axis of the time simulation, linear about a working point, in continuous time: winding, motor side, transmission, output. Friction
 * counts with its viscous part only, backlash lies on one flank, and no end stop is near. What the output presses on is a job's own
 * (`jobs/`). Units are those of an output that travels; where it turns read radians, newton metres and kg·m².
 */

import { axisFilled, type Output } from '../axis/fill.ts'
import { axisOf } from '../axis/reflect.ts'
import type { Actuator } from '../scenario/index.ts'
import { Dense } from './matrix.ts'

/**
 * States, SI at the output's coordinate; `jaw` is the output, `part` what it moves or stretches. `sampled` is the travel since the servo
 * last read the encoder, so that an axis that presses on nothing needs no position at all; `twist` is how far the output is ahead of
 * what it carries along; `fade` and `farFade` are the relaxed shares of squeeze; `bristle` is the friction of work that slides [N].
 */
export type PlantState =
  | 'current'
  | 'speed'
  | 'stretch'
  | 'jawSpeed'
  | 'sampled'
  | 'jaw'
  | 'part'
  | 'partSpeed'
  | 'twist'
  | 'fade'
  | 'farFade'
  | 'bristle'

/** Weights of the states in a quantity. */
export type Weights = Partial<Record<PlantState, number>>

export interface PlantModel {
  names: PlantState[]
  a: Dense
  /** Voltage into the states. */
  b: Dense
  /** Effort that the gauge feels [N]; empty where there is nothing to feel. */
  nearForce: Weights
  /** Motor force [N/A] and back-EMF [V·s/m], resistance [Ω], mass of motor side and output [kg], at this point's temperature and travel. */
  forceConstant: number
  resistance: number
  mass: number
  jawMass: number
  /** Mass that the output carries along on a spring [kg]. */
  carried: number
  /** What is pressed on gives way for as long as it is pressed on, so that no effort lasts by itself. */
  leaks: boolean
}

/** A plant that is the axis alone, and how weights are added to the rate of a state. */
export interface AxisPlant {
  model: PlantModel
  add(state: PlantState, weights: Weights, factor?: number): void
}

/** States of an axis that presses on nothing. */
const AXIS: readonly PlantState[] = ['current', 'speed', 'stretch', 'jawSpeed', 'sampled', 'jaw']

/** The axis with an output at a travel [m], in room for further states. */
export function axisPlant(
  actuator: Actuator,
  output: Output,
  travel: number,
  more: readonly PlantState[] = [],
): AxisPlant {
  const names = [...AXIS, ...more]
  const { stiffness, damping, viscous } = actuator.transmission
  const axis = axisOf(actuator)
  const jawMass = output.mass
  const { heat, commutation } = axisFilled(actuator, output)
  // A step motor's field is taken a quarter of a cycle ahead, where it pulls most.
  const shape = commutation.factor(travel, travel + axis.cyclePitch / 4)
  const forceConstant = axis.forcePerAmpere * heat.flux * shape
  const resistance = actuator.motor.resistance * heat.resistance
  const { inductance } = actuator.motor
  const a = new Dense(names.length, names.length)
  const b = new Dense(names.length, 1)
  const add = (state: PlantState, weights: Weights, factor = 1) => {
    const row = names.indexOf(state)
    for (const [name, weight] of Object.entries(weights)) a.add(row, names.indexOf(name as PlantState), factor * weight)
  }
  const link: Weights = { stretch: stiffness, speed: damping, jawSpeed: -damping }
  add('current', { current: -resistance / inductance, speed: -forceConstant / inductance })
  b.set(names.indexOf('current'), 0, 1 / inductance)
  add('speed', { current: forceConstant, speed: -viscous }, 1 / axis.mass)
  add('speed', link, -1 / axis.mass)
  add('stretch', { speed: 1, jawSpeed: -1 })
  add('jawSpeed', link, 1 / jawMass)
  add('sampled', { speed: 1 })
  add('jaw', { jawSpeed: 1 })
  const masses = { mass: axis.mass, jawMass, carried: 0 }
  return { model: { names, a, b, nearForce: {}, forceConstant, resistance, ...masses, leaks: false }, add }
}
