/**
 * The plant of the time simulation, linear about a working point, in continuous time: winding, motor side, transmission, jaw,
 * contact, part. Friction counts with its viscous part only, backlash lies on one flank, and no end stop is near.
 */

import { axisFilled, type Output } from '../axis/fill.ts'
import { axisOf } from '../axis/reflect.ts'
import { gripOutput } from '../job/grip/fill.ts'
import { contactsOf } from '../job/grip/geometry.ts'
import type { Actuator, Scenario } from '../scenario/index.ts'
import { Dense } from './matrix.ts'
import type { Contact, WorkingPoint } from './working-point.ts'

/**
 * States, SI at the jaw coordinate. `sampled` is the travel since the servo last read the encoder, so that an axis without a
 * contact needs no position at all; `fade` and `farFade` are the relaxed shares of the two contacts' squeeze.
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
  | 'fade'
  | 'farFade'

/** Weights of the states in a quantity. */
export type Weights = Partial<Record<PlantState, number>>

export interface PlantModel {
  names: PlantState[]
  a: Dense
  /** Voltage into the states. */
  b: Dense
  /** Force at the near contact, which the gauge feels [N]; empty in free air. */
  nearForce: Weights
  /** Motor force [N/A] and back-EMF [V·s/m], resistance [Ω], mass of motor side and jaw [kg], at this point's temperature and travel. */
  forceConstant: number
  resistance: number
  mass: number
  jawMass: number
}

/** A plant that is the axis alone, and how weights are added to the rate of a state. */
interface AxisPlant {
  model: PlantModel
  add(state: PlantState, weights: Weights, factor?: number): void
}

/** The axis with an output at a travel [m], in room for further states. */
export function axisPlant(actuator: Actuator, output: Output, travel: number, names: PlantState[]): AxisPlant {
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
  return { model: { names, a, b, nearForce: {}, forceConstant, resistance, mass: axis.mass, jawMass }, add }
}

export function plantModel(scenario: Scenario, point: WorkingPoint): PlantModel {
  const { actuator, part } = scenario
  const { contact } = point
  const { fraction, time } = part.relaxation
  const mirrored = contactsOf(scenario) === 2
  const names = namesOf(contact, mirrored, fraction > 0)
  const { model, add } = axisPlant(actuator, gripOutput(scenario), point.travel, names)
  const { jawMass } = model
  if (!contact) return model
  const near = contactForce(contact, fraction, mirrored ? { jaw: 1 } : { jaw: 1, part: -1 }, 'fade')
  add('jawSpeed', near, -(mirrored ? 2 : 1) / jawMass)
  if (fraction > 0)
    add('fade', fading(contact, fraction, mirrored ? { jaw: 1 } : { jaw: 1, part: -1 }, 'fade'), 1 / time)
  if (mirrored) return { ...model, nearForce: near }
  const far = contactForce(contact, fraction, { part: 1 }, 'farFade')
  add('part', { partSpeed: 1 })
  add('partSpeed', near, 1 / part.mass)
  add('partSpeed', far, -1 / part.mass)
  if (fraction > 0) add('farFade', fading(contact, fraction, { part: 1 }, 'farFade'), 1 / time)
  return { ...model, nearForce: near }
}

/**
 * Against two driven jaws the part stays in the middle: its own swing changes one force as much as the other and the drive sees
 * nothing of it. Against an anvil it moves.
 */
function namesOf(contact: Contact | null, mirrored: boolean, fades: boolean): PlantState[] {
  const names: PlantState[] = ['current', 'speed', 'stretch', 'jawSpeed', 'sampled', 'jaw']
  if (!contact) return names
  if (fades) names.push('fade')
  if (!mirrored) names.push('part', 'partSpeed')
  if (!mirrored && fades) names.push('farFade')
  return names
}

const RATES = { jaw: 'jawSpeed', part: 'partSpeed' } as const

/** F = k·(s − φ·d) + c·ṡ: k and c of the contact, squeeze s, d the share of the squeeze that has relaxed. */
function contactForce(contact: Contact, fraction: number, squeeze: Weights, fade: PlantState): Weights {
  const force: Weights = fraction > 0 ? { [fade]: -contact.stiffness * fraction } : {}
  for (const name of ['jaw', 'part'] as const) {
    const weight = squeeze[name] ?? 0
    if (weight === 0) continue
    force[name] = contact.stiffness * weight
    force[RATES[name]] = contact.damping * weight
  }
  return force
}

/** τ·ḋ = s_p − d with the half part's own squeeze s_p = (k_pad·s + φ·k_part·d)/(k_pad + k_part): the Maxwell branch in series with the pad. */
function fading({ part, pad }: Contact, fraction: number, squeeze: Weights, fade: PlantState): Weights {
  const own: Weights = { [fade]: (fraction * part) / (pad + part) - 1 }
  for (const name of ['jaw', 'part'] as const) {
    const weight = squeeze[name] ?? 0
    if (weight !== 0) own[name] = (pad * weight) / (pad + part)
  }
  return own
}
