/**
 * Blocks of axis and grip made from options by name, at a step of their own and ready to run. Constants go through the same lines
 * that fill a run, so that a test of a block guards those too.
 */
import type { Axis } from '../sim/axis/axis.ts'
import { EndStops } from '../sim/axis/endstops.ts'
import { axisFilled } from '../sim/axis/fill.ts'
import type { Friction } from '../sim/axis/friction.ts'
import type { Heat } from '../sim/axis/heat.ts'
import type { Transmission } from '../sim/axis/transmission.ts'
import { Winding } from '../sim/axis/winding.ts'
import type { Gauge } from '../sim/control/gauge.ts'
import { type Actuator, type Scenario, strategyOf } from '../sim/index.ts'
import { Side } from '../sim/job/grip/contact/side.ts'
import { fillSide } from '../sim/job/grip/fill.ts'
import { Slip } from '../sim/job/grip/slip.ts'
import { modelOf } from '../sim/model/model.ts'
import { make } from './scenario/make.ts'

const scenario = make()

/** An axis whose thermal and transmission constants are these; values that no scenario allows are let through. */
function axisWith(thermal: object, transmission: object): Axis {
  const { actuator } = scenario
  const motor = { ...actuator.motor, thermal: { ...actuator.motor.thermal, ...thermal } }
  const changed = { ...actuator, motor, transmission: { ...actuator.transmission, ...transmission } } as Actuator
  return axisFilled(changed, { mass: 1, stroke: 1, reach: 1 })
}

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
  const { friction } = axisWith({}, options)
  Object.assign(friction, { mass, raise, lower })
  friction.setStep(step)
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
  const { exponent, stiffness, padStiffness, damping, yieldForce } = options
  const relaxation = { fraction: options.relaxationFraction, time: options.relaxationTime }
  const part = { ...scenario.part, exponent, stiffness, damping, relaxation, yieldForce } as Scenario['part']
  const side = new Side()
  fillSide(side, { jaws: { ...scenario.jaws, padStiffness }, part })
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
  /** Centre of mass off the pads, radius of the limit surface, radius of gyration [m]. */
  below?: number
  beside?: number
  radius?: number
  gyration?: number
}

export function slipOf(options: SlipOptions): Slip {
  const { mass, padStiffness, step, below = 0, beside = 0, radius = 0.01, gyration = 0.02, ...friction } = options
  const slip = new Slip()
  slip.set(mass, gyration, padStiffness)
  slip.gripAt(below, beside, radius)
  slip.staticFriction = friction.static
  slip.slidingFriction = friction.sliding
  slip.setStep(step)
  return slip
}

export function transmissionOf(stiffness: number, damping: number, backlash: number): Transmission {
  return axisWith({}, { stiffness, damping, backlash }).transmission
}

export function windingOf(inductance: number, step: number): Winding {
  const winding = Object.assign(new Winding(), { inductance })
  winding.setStep(step)
  return winding
}

/** Stroke [m], stiffness [N/m], mass that strikes [kg]. */
export function endStopsOf(stroke: number, stiffness: number, mass: number): EndStops {
  const stops = new EndStops()
  stops.stroke = stroke
  stops.set(stiffness, mass)
  return stops
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
  const { heat } = axisWith(options, {})
  Object.assign(heat.state, start)
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
export function gaugeOf(gauge: GaugeOptions, period: number, seed: number): Gauge {
  const drive = { ...scenario.drive, currentRate: 1 / period }
  const sensors = { ...scenario.sensors, gauge }
  const { bench } = modelOf(
    { ...scenario, drive, sensors, run: { ...scenario.run, seed } },
    strategyOf('current-clamp'),
  )
  return bench.drive.gauge
}
