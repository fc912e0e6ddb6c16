/** The constants of a closure, from its part of the scenario. */
import type { Output } from '../../axis/fill.ts'
import { cosine } from '../../core/elementary.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { CapGroups } from '../../scenario/schema/cap/index.ts'
import type { CapLoad } from './load.ts'
import { capIn } from './scenario.ts'
import type { Thread } from './thread.ts'

const { PI } = Math

/** Torque for each newton that the thread carries [N·m/N]. */
export interface PerNewton {
  /** Without friction: way down for each radian. */
  climb: number
  /** Friction in the thread turned on, against its load, and off; of the liner on the rim. */
  on: number
  off: number
  face: number
}

/**
 * Of a thread with collar: turned on r·tan(φ′ + λ) + µ_c·r_c, turned off r·tan(φ′ − λ) + µ_c·r_c, with tan λ = lead/(π·d_m) and
 * tan φ′ = µ/cos α (Shigley, 9th ed., eq. 8-1 to 8-6; the lossless r·tan λ is told apart).
 */
export function perNewton(closure: CapGroups['closure']): PerNewton {
  const radius = closure.meanDiameter / 2
  const slope = closure.lead / (PI * closure.meanDiameter)
  const friction = closure.threadFriction / cosine(closure.flankAngle)
  const climb = radius * slope
  return {
    climb,
    on: (radius * (friction + slope)) / (1 - friction * slope) - climb,
    off: (radius * (friction - slope)) / (1 + friction * slope) + climb,
    face: closure.faceFriction * closure.faceRadius,
  }
}

/** Angle of the head at first touch of the nominal liner [rad]. */
export const seatAngle = (scenario: Scenario): number => {
  const { chuck, closure } = capIn(scenario)
  return chuck.startAngle + closure.engagement
}

export function fillCap(load: CapLoad, scenario: Scenario): void {
  const { closure, chuck, window } = capIn(scenario)
  load.stiffness = chuck.stiffness
  load.damping = chuck.damping
  load.inertia = closure.inertia
  load.topLoad = chuck.topLoad
  load.topRate = chuck.topRate
  load.least = window.torque.least
  load.mostTorque = window.torque.most ?? Number.POSITIVE_INFINITY
  load.leastTurns = window.leastTurns ?? 0
  fillThread(load.thread, scenario)
}

function fillThread(thread: Thread, scenario: Scenario): void {
  const { closure, chuck, liner } = capIn(scenario)
  const { climb, on, off, face } = perNewton(closure)
  thread.start = chuck.startAngle
  thread.seat = seatAngle(scenario)
  thread.climb = climb
  thread.against = on
  thread.along = off
  thread.face = face
  thread.runDown = closure.runDown
  thread.rest = closure.restFriction - 1
  thread.stiffness = liner.stiffness
  thread.relaxing = liner.relaxing
  thread.relaxationTime = liner.relaxationTime
  thread.strip = closure.stripTorque ?? Number.POSITIVE_INFINITY
  thread.stripShare = closure.stripShare
  const { misstart } = closure
  thread.jams = misstart ? chuck.startAngle + misstart.after : Number.POSITIVE_INFINITY
  thread.jamRate = misstart ? misstart.stiffness / (climb + on) : 0
  thread.friction.stribeck = 1 / (closure.slideSpeed * closure.slideSpeed)
  thread.friction.stiffness = closure.stiffness
  thread.friction.mass = closure.inertia
}

/** A spindle has no end of its way: stops as far off as numbers are still exact to a small part of a degree [rad]. */
const ENDLESS = 1e6

/** The chuck as the axis' output. */
export function capOutput(scenario: Scenario): Output {
  return { mass: capIn(scenario).chuck.inertia, stroke: ENDLESS, reach: ENDLESS }
}
