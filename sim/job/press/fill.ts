/** The constants of a pressed joint, from its part of the scenario. */
import type { Output } from '../../axis/fill.ts'
import { cosine, sine } from '../../core/elementary.ts'
import { numbers } from '../../core/native.ts'
import type { Scenario } from '../../scenario/index.ts'
import { POINT_SIZE } from './band.ts'
import type { Joint } from './joint.ts'
import { type Fit, pressurePerOverlap } from './lame.ts'
import type { PressLoad } from './load.ts'
import { pressIn } from './scenario.ts'

const { PI } = Math

/** The two rings. */
export function fitOf(scenario: Scenario): Fit {
  const { bushing, bore } = pressIn(scenario)
  return {
    inside: bushing.innerDiameter / 2,
    joint: bushing.diameter / 2,
    outside: bore.outerDiameter / 2,
    inner: bushing,
    outer: bore,
  }
}

/** Pressure in the joint where it is engaged [Pa]; 0 for a bushing that has play. */
export const jointPressure = (scenario: Scenario): number =>
  (Math.max(0, pressIn(scenario).bushing.interference) / 2) * pressurePerOverlap(fitOf(scenario))

/** Depth of the shoulder [m]; Infinity: there is none. */
export const shoulderDepth = (scenario: Scenario): number => pressIn(scenario).bore.shoulder?.depth ?? Infinity

/** Where the bushing is to end [m]: at the shoulder, or at its least depth. */
export function seatDepth(scenario: Scenario): number {
  const { bore, window } = pressIn(scenario)
  return bore.shoulder?.depth ?? window.depth.least
}

/** Least of the limits that ram, joint and bushing have [N]; Infinity: none. */
export function forceLimit(scenario: Scenario): number {
  const { bushing, window } = pressIn(scenario)
  return Math.min(window.mostForce ?? Infinity, bushing.mostForce ?? Infinity)
}

export function fillPress(load: PressLoad, scenario: Scenario): void {
  const { bushing, bore, ram, window } = pressIn(scenario)
  load.gap = ram.gap
  load.stiffness = ram.stiffness
  load.damping = ram.damping
  load.mass = bushing.mass
  load.limit = forceLimit(scenario)
  load.ends.stroke = shoulderDepth(scenario)
  load.ends.stiffness = bore.shoulder?.stiffness ?? ram.stiffness
  load.ends.damping = Math.sqrt(load.ends.stiffness * bushing.mass)
  load.band.count = window.band.length
  load.band.points = numbers(POINT_SIZE * window.band.length)
  window.band.forEach(({ depth, least, most }, n) => {
    load.band.points.set([depth, least, most], POINT_SIZE * n)
  })
  fillJoint(load.joint, scenario)
}

/** `joint` alone, as the closed forms of its forces are asked of it too. */
export function fillJoint(made: Joint, scenario: Scenario): void {
  const { bushing, joint } = pressIn(scenario)
  const slope = tangent(bushing.chamfer.angle)
  const { pressing } = joint.friction
  made.overlap = bushing.interference / 2
  made.pressure = pressurePerOverlap(fitOf(scenario))
  made.circumference = PI * bushing.diameter
  made.length = bushing.length
  made.entry = Math.max(0, made.overlap) / slope
  made.climb = slope
  // A wedge pushed in, (tan θ + µ)/(1 − µ·tan θ), and let out again, (µ − tan θ)/(1 + µ·tan θ), each beside the bare tan θ.
  made.inwards = (pressing * (1 + slope * slope)) / (1 - Math.min(pressing * slope, STEEPEST))
  made.outwards = (pressing * (1 + slope * slope)) / (1 + pressing * slope)
  made.sliding = pressing
  made.rest = joint.friction.static - pressing
  made.tilt = bushing.tilt / 2
  fillFriction(made, scenario)
}

/** A wedge with friction jams where µ·tan θ reaches 1; it is taken as one that is all but jammed. */
const STEEPEST = 0.99

function fillFriction({ friction }: Joint, scenario: Scenario): void {
  const { bushing, joint } = pressIn(scenario)
  friction.stribeck = 1 / (joint.slideSpeed * joint.slideSpeed)
  friction.stiffness = joint.stiffness
  friction.mass = bushing.mass
}

/** The same bits in every engine, which `Math.tan` does not promise. */
export const tangent = (angle: number): number => sine(angle) / cosine(angle)

/** The ram as the axis' output. */
export function pressOutput(scenario: Scenario): Output {
  const { mass, stroke } = pressIn(scenario).ram
  return { mass, stroke, reach: stroke }
}
