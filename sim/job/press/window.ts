/** What a joint has to be: the force that it takes on the way in, in closed form, and the window that it is held against. */
import type { Scenario } from '../../scenario/index.ts'
import { fillJoint, forceLimit, seatDepth, shoulderDepth } from './fill.ts'
import { Joint } from './joint.ts'
import { pressIn } from './scenario.ts'

export interface JointWindow {
  /** Least and most depth [m]; null: no most. */
  depth: { least: number; most: number | null }
  /** Least and most force on the shoulder [N]; null where there is no shoulder, or no such demand. */
  seat: { least: number | null; most: number | null }
  /** Force that must not be exceeded anywhere [N]; null: none. */
  most: number | null
  /** Depth [m] and forces [N]. */
  band: readonly { depth: number; least: number; most: number }[]
}

const bounded = (value: number) => (value < Number.POSITIVE_INFINITY ? value : null)

export function jointWindow(scenario: Scenario): JointWindow {
  const { window, bore } = pressIn(scenario)
  const { seat, depth } = window
  const faces = bore.shoulder !== null
  return {
    depth: { least: depth.least, most: depth.most ?? null },
    seat: { least: faces && seat.least > 0 ? seat.least : null, most: faces ? (seat.most ?? null) : null },
    most: bounded(forceLimit(scenario)),
    band: window.band,
  }
}

/** The joint with its constants. */
export function jointOf(scenario: Scenario): Joint {
  const joint = new Joint()
  fillJoint(joint, scenario)
  return joint
}

/** Force of the ram that slides the bushing on at a depth [N], before the shoulder; a ram that hardly moves. */
export function slidingForce(scenario: Scenario, depth: number): number {
  const joint = jointOf(scenario)
  joint.engage(depth)
  return joint.climb * joint.onCone(depth) + joint.friction.coulomb
}

/** Force that starts to push a bushing out again that stands at a depth [N]: static friction over the whole length, the cone left out. */
export function pushOutForce(scenario: Scenario, depth: number): number {
  const joint = jointOf(scenario)
  const engaged = joint.engaged(depth)
  return pressIn(scenario).joint.friction.static * (joint.straight(engaged) + joint.askew(engaged))
}

/** Least force of the ram that meets the window at the end of the way [N]: slides to the depth, and presses on the shoulder. */
export function neededForce(scenario: Scenario): number {
  const { window, bore } = pressIn(scenario)
  const faces = bore.shoulder !== null && window.depth.least <= shoulderDepth(scenario)
  const slide = slidingForce(scenario, Math.min(seatDepth(scenario), window.depth.least))
  return faces ? Math.max(slide, window.seat.least) : slide
}

/** Most force that is allowed at the end of the way [N]; Infinity: any. */
export function allowedForce(scenario: Scenario): number {
  const { window, bore } = pressIn(scenario)
  const seat = bore.shoulder === null ? Infinity : (window.seat.most ?? Infinity)
  return Math.min(forceLimit(scenario), seat)
}
