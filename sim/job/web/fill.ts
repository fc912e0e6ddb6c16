/** The constants of a web, its line and its roll, from their part of the scenario. */
import type { Output } from '../../axis/fill.ts'
import { forcePerAmpereAt } from '../../axis/flux.ts'
import { axisOf } from '../../axis/reflect.ts'
import { LINE_PHASE, type Line } from '../../control/line.ts'
import type { LineFollower } from '../../control/line-follower.ts'
import { ramp } from '../../control/profile.ts'
import { numbers } from '../../core/native.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { WebGroups } from '../../scenario/schema/web/index.ts'
import type { WebLoad } from './load.ts'
import { webIn } from './scenario.ts'

const { PI } = Math

/** Force for each share of stretch, E·A [N]. */
export function webStiffness(scenario: Scenario): number {
  const { modulus, width, thickness } = webIn(scenario).web
  return modulus * width * thickness
}

/** Inertia of what is wound for each m⁴ of outer radius [kg/m²], J = ½·π·ρ·w·(R⁴ − r⁴); 0 for a roll that winds nothing. */
export function woundInertia(scenario: Scenario): number {
  const { web, roll } = webIn(scenario)
  return roll.kind === 'winds' ? 0.5 * PI * web.density * web.width : 0
}

/** Growth of the squared radius for each metre wound [m], from π·(R² − r²) = h·length. */
export function radiusGrowth(scenario: Scenario): number {
  const { web, roll } = webIn(scenario)
  return roll.kind === 'winds' ? web.thickness / PI : 0
}

/** x⁴; as products, since engines round powers differently. */
const fourth = (x: number) => x * x * (x * x)

/** Inertia of all that turns behind the transmission, at the start [kg·m²]. */
export function startInertia(scenario: Scenario): number {
  const { roll, idlers } = webIn(scenario)
  const wound = woundInertia(scenario) * (fourth(roll.radius) - fourth(roll.coreRadius))
  return roll.inertia + wound + idlers.mass * roll.radius * roll.radius
}

/** Turn of the roll by which the slack is taken up [rad]. */
export function turnToTaut(scenario: Scenario): number {
  const { web, roll } = webIn(scenario)
  return web.slack / roll.radius
}

/** Fastest that the line runs [m/s]. */
export const topSpeed = (scenario: Scenario): number =>
  Math.max(0, ...webIn(scenario).line.ramps.map(({ speed }) => speed))

export function fillWeb(load: WebLoad, scenario: Scenario): void {
  const { web, span, roll, line, window } = webIn(scenario)
  const stiffness = webStiffness(scenario)
  load.length = span.length
  load.stiffness = stiffness
  load.entry = span.entryTension / stiffness
  load.damping = web.damping
  load.radius = roll.radius
  load.growth = radiusGrowth(scenario)
  load.inertia = startInertia(scenario)
  load.perRadius = woundInertia(scenario)
  load.runout = roll.runout
  load.lineRunout = line.runout
  load.lineRadius = line.radius
  load.leastWanted = window.least
  load.mostWanted = window.most
  load.from = window.from
  load.tears = web.breakTension ?? Number.POSITIVE_INFINITY
  load.period = 1 / scenario.drive.currentRate
  load.state.drawn = -web.slack
  fillIdlers(load, scenario)
  fillLine(load.line, scenario)
}

function fillIdlers(load: WebLoad, scenario: Scenario): void {
  const { idlers } = webIn(scenario)
  load.traction = idlers.traction
  load.idlers.coulomb = idlers.coulomb
  load.idlers.coulombBack = idlers.coulomb
  load.idlers.rise = idlers.breakaway - idlers.coulomb
  load.idlers.viscous = idlers.viscous
  load.idlers.viscousBack = idlers.viscous
  load.idlers.stribeck = 1 / (idlers.slideSpeed * idlers.slideSpeed)
  load.idlers.stiffness = idlers.stiffness
  load.idlers.mass = idlers.mass
}

/** Start [s], length so far [m], speed [m/s], acceleration [m/s²], jerk [m/s³]. */
export type LinePhase = [number, number, number, number, number]

export function fillLine(made: Line, scenario: Scenario): void {
  const phases: LinePhase[] = [[0, 0, 0, 0, 0]]
  let speed = 0
  for (const each of webIn(scenario).line.ramps) {
    if (each.speed !== speed) addRamp(phases, speed, each)
    speed = each.speed
  }
  made.count = phases.length
  made.phases = numbers(LINE_PHASE * phases.length)
  phases.forEach((phase, n) => {
    made.phases.set(phase, LINE_PHASE * n)
  })
}

type Ramp = Pick<WebGroups['line']['ramps'][number], 'start' | 'speed' | 'acceleration' | 'jerk'>

/** A ramp from a steady speed [m/s]: two stretches at full jerk about one at full acceleration, then steady speed again. */
export function addRamp(phases: LinePhase[], from: number, { start, speed: to, acceleration, jerk }: Ramp): void {
  const made = ramp(from, to, acceleration, jerk)
  const bend = (made.acceleration * made.jerkTime) / 2
  const signed = made.acceleration > 0 ? jerk : -jerk
  if (made.duration > 0) {
    addPhase(phases, start, from, 0, signed)
    addPhase(phases, start + made.jerkTime, from + bend, made.acceleration, 0)
    addPhase(phases, start + made.duration - made.jerkTime, to - bend, made.acceleration, -signed)
  }
  addPhase(phases, start + made.duration, to, 0, 0)
}

/** The length until then is what the phase before it has made. */
function addPhase(phases: LinePhase[], start: number, speed: number, acceleration: number, jerk: number): void {
  const [begun, way, v, a, j] = phases.at(-1)!
  const t = start - begun
  phases.push([start, way + t * (v + t * (a / 2 + (t * j) / 6)), speed, acceleration, jerk])
}

/**
 * How the drive follows the line. A strategy that pulls with its current limit has its reference run ahead of the roll; one that works
 * with the gauge trims the speed and keeps no place.
 */
export function fillFollower(follower: LineFollower, scenario: Scenario, sensed: boolean): void {
  const { roll, follow } = webIn(scenario)
  const { actuator, servo, approach } = scenario
  const perAmpere = forcePerAmpereAt(actuator)
  const counts = follow.radius === 'wound'
  follower.on = 1
  follower.most = sensed ? Number.POSITIVE_INFINITY : turnToTaut(scenario)
  follower.overspeed = follow.overspeed
  follower.farthest = sensed ? Number.POSITIVE_INFINITY : 2 * approach.overtravel
  follower.radius = roll.radius
  follower.growth = counts ? radiusGrowth(scenario) : 0
  follower.inertia = (follow.inertia * (axisOf(actuator).mass + startInertia(scenario))) / perAmpere
  follower.wound = counts ? (follow.inertia * woundInertia(scenario)) / perAmpere : 0
  follower.losses = (follow.losses * actuator.transmission.viscous) / perAmpere
  follower.limit = servo.currentLimit
  follower.state.radius = roll.radius
  fillLine(follower.line, scenario)
}

/** The roll as the axis' output; it turns on for ever. */
export function webOutput(scenario: Scenario): Output {
  return {
    mass: startInertia(scenario),
    stroke: Number.POSITIVE_INFINITY,
    reach: Number.POSITIVE_INFINITY,
    endless: true,
  }
}
