/** Blocks of axis and grip made from options by name, as the tests like them, at a step of their own and ready to run. */
import { EndStops } from '../sim/axis/endstops.ts'
import { Friction } from '../sim/axis/friction.ts'
import { Heat } from '../sim/axis/heat.ts'
import { Transmission } from '../sim/axis/transmission.ts'
import { Winding } from '../sim/axis/winding.ts'
import { Gauge } from '../sim/control/gauge.ts'
import { seeded } from '../sim/core/noise.ts'
import { Side } from '../sim/job/grip/contact/side.ts'
import { Slip } from '../sim/job/grip/slip.ts'

export interface FrictionOptions {
  coulomb: number
  breakaway: number
  stribeckSpeed: number
  viscous: number
  bristleStiffness: number
}

/** Mass on the bristles [kg], friction for each newton of load against it and with it, step [s]. */
export function frictionOf(
  options: FrictionOptions,
  mass: number,
  raise: number,
  lower: number,
  step: number,
): Friction {
  const { coulomb, breakaway, stribeckSpeed, viscous, bristleStiffness } = options
  const friction = Object.assign(new Friction(), { coulomb, viscous, mass, raise, lower })
  friction.rise = breakaway - coulomb
  friction.stribeck = 1 / (stribeckSpeed * stribeckSpeed)
  friction.stiffness = bristleStiffness
  friction.setStep(step)
  friction.settle()
  return friction
}

export interface SideOptions {
  exponent: number
  stiffness: number
  padStiffness: number
  damping: number
  relaxationFraction: number
  relaxationTime: number
  yieldForce: number
  step: number
}

export function sideOf(options: SideOptions): Side {
  const { exponent, relaxationTime } = options
  const side = Object.assign(new Side(), { exponent, relaxationTime })
  side.wholeStiffness = options.stiffness
  side.pad = options.padStiffness
  side.damping = 2 * options.damping
  side.share = options.relaxationFraction
  side.wholeYield = options.yieldForce
  side.setStep(options.step)
  side.settle(false)
  return side
}

export interface SlipOptions {
  mass: number
  padStiffness: number
  static: number
  sliding: number
  step: number
}

export function slipOf({ mass, padStiffness, step, ...friction }: SlipOptions): Slip {
  const slip = new Slip()
  slip.set(mass, padStiffness)
  slip.staticFriction = friction.static
  slip.slidingFriction = friction.sliding
  slip.step = step
  return slip
}

export function transmissionOf(stiffness: number, damping: number, backlash: number): Transmission {
  return Object.assign(new Transmission(), { stiffness, damping, play: backlash / 2 })
}

export function windingOf(inductance: number, step: number): Winding {
  const winding = Object.assign(new Winding(), { inductance })
  winding.setStep(step)
  return winding
}

/** Stroke [m], stiffness [N/m], mass that strikes [kg]. */
export function endStopsOf(stroke: number, stiffness: number, mass: number): EndStops {
  return Object.assign(new EndStops(), { stroke, stiffness, damping: Math.sqrt(stiffness * mass) })
}

export interface HeatOptions {
  windingResistance: number
  windingTime: number
  housingResistance: number
  housingTime: number
  ambient: number
  magnetCoefficient: number
}

export function heatOf(options: HeatOptions, start?: { winding: number; housing: number }): Heat {
  const { windingResistance, windingTime, housingResistance, housingTime, ambient, magnetCoefficient } = options
  const heat = Object.assign(new Heat(), { windingResistance, housingResistance, ambient, magnetCoefficient })
  heat.windingCapacity = windingTime / windingResistance
  heat.housingCapacity = housingTime / housingResistance
  Object.assign(heat.state, start ?? { winding: ambient, housing: ambient })
  heat.settle()
  return heat
}

export interface GaugeOptions {
  bandwidth: number
  gainError: number
  offset: number
  drift: number
  noise: number
  resolution: number
  fingerMass: number
}

/** `period` [s] between two samples. */
export function gaugeOf({ bandwidth, ...constants }: GaugeOptions, period: number, seed: number): Gauge {
  const gauge = Object.assign(new Gauge(), constants)
  gauge.weight = (period * bandwidth) / (1 + period * bandwidth)
  gauge.source.state.word = seeded(seed + 0x9e3779b9).state.word | 0
  return gauge
}
