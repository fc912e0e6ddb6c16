/**
 * A press to the loops. Before the bushing touches, the ram moves freely. In the joint it slides, against a force that grows with the
 * way, or stands, held by bristles that are elastic; on the shoulder frame and shoulder give one behind the other, the bristles beside
 * the shoulder. In a bore without one it stands in the joint at its depth. Own linearisation of `job/press/load.ts`; not seen: the
 * frame that can only push, and friction that gives way.
 */
import { ELASTIC } from '../../axis/friction.ts'
import { pressOutput, seatDepth, shoulderDepth } from '../../job/press/fill.ts'
import type { Joint } from '../../job/press/joint.ts'
import type { PressLoad } from '../../job/press/load.ts'
import { pressIn } from '../../job/press/scenario.ts'
import { jointOf } from '../../job/press/window.ts'
import type { Scenario } from '../../scenario/index.ts'
import { axisPlant, type PlantModel, type Weights } from '../axis-plant.ts'
import { CARRIED, carriedPlant, type Sliding } from './carried.ts'
import type { Contact, JobLoops, WorkBound, WorkingPoint, WorkingPointId } from './job.ts'

const LABELS: Partial<Record<WorkingPointId, string>> = {
  free: 'Before the bore',
  sliding: 'Sliding in the joint',
  resting: 'At rest in the joint',
  softest: 'On the shoulder, softest',
  nominal: 'On the shoulder',
  stiffest: 'On the shoulder, stiffest',
}

const IN_JOINT: Partial<Record<WorkingPointId, string>> = {
  softest: 'At rest at its depth, softest',
  nominal: 'At rest at its depth',
  stiffest: 'At rest at its depth, stiffest',
}

/** A joint that takes less than this share of the wanted force is none. */
const NO_JOINT = 0.01
/** Share of the level at which bristles stand in a bushing at rest, and share of the force on a shoulder by which it may swing. */
const BENT = 0.5
const ROOM = 0.4

const hasShoulder = (scenario: Scenario) => Number.isFinite(shoulderDepth(scenario))

export const pressLoops: JobLoops<PressLoad> = {
  points(scenario) {
    const seated: WorkingPointId[] = ['softest', 'nominal', 'stiffest']
    const [joins, faces] = [hasJoint(scenario, seatDepth(scenario) / 2), hasShoulder(scenario)]
    if (!joins) return faces ? ['free', ...seated] : ['free']
    return faces ? ['free', 'sliding', 'resting', ...seated] : ['free', 'sliding', ...seated]
  },
  stiffened,
  point: pressPoint,
  plant: pressPlant,
  limit(scenario, { force }) {
    const most = pressIn(scenario).bushing.mostForce
    return most !== undefined && force >= most ? { kind: 'bruises', force: most } : null
  },
  pull: (_, { force }) => force,
  setDown(load, scenario, point) {
    if (!point.contact) return
    const { depth, bent } = stands(scenario, point)
    load.state.depth = depth
    load.joint.engage(depth)
    load.joint.friction.state.bristle = bent / load.joint.friction.stiffness
  },
  met(load, { contact }) {
    if (!contact) return []
    const { friction } = load.joint
    const most = ELASTIC * (friction.coulomb + friction.rise)
    const bounds: WorkBound[] = load.state.force === 0 ? ['contact'] : []
    if (friction.stiffness * Math.abs(friction.state.bristle) > most) bounds.push('slides')
    return Number.isNaN(load.state.over) ? bounds : [...bounds, 'part']
  },
  calm: (scenario) => scenario,
}

function stiffened(scenario: Scenario, factor: number): Scenario {
  const { ram, bore, joint } = pressIn(scenario)
  const { shoulder } = bore
  const more = {
    ram: { ...ram, stiffness: ram.stiffness * factor },
    bore: { ...bore, shoulder: shoulder && { ...shoulder, stiffness: shoulder.stiffness * factor } },
    joint: { ...joint, stiffness: joint.stiffness * factor },
  }
  return { ...scenario, ...more }
}

const engaged = (scenario: Scenario, depth: number): Joint => {
  const joint = jointOf(scenario)
  joint.engage(depth)
  return joint
}

const coneAt = (joint: Joint, depth: number) => joint.climb * joint.onCone(depth)

/** Friction of a bushing that slides slowly at a depth [N]. */
const levelAt = (scenario: Scenario, depth: number) => engaged(scenario, depth).friction.coulomb

const hasJoint = (scenario: Scenario, depth: number) =>
  levelAt(scenario, depth) > NO_JOINT * scenario.strategies.sensedForce.target

/** Speed with which the ram comes by at a depth [m/s]. */
function speedAt({ approach }: Scenario, seat: number, depth: number): number {
  return seat - depth < approach.creepFrom ? Math.min(approach.creepSpeed, approach.speed) : approach.speed
}

function pressPoint(scenario: Scenario, id: WorkingPointId, force: number): Omit<WorkingPoint, 'id' | 'factor'> {
  const { ram } = pressIn(scenario)
  const shoulder = hasShoulder(scenario)
  const label = (shoulder ? undefined : IN_JOINT[id]) ?? LABELS[id]!
  if (id === 'free') return { label, force: 0, travel: ram.gap / 2, speed: 0, room: 0, contact: null }
  const depth = id === 'sliding' || id === 'resting' ? seatDepth(scenario) / 2 : seatDepth(scenario)
  const joint = engaged(scenario, depth)
  const { coulomb, stiffness } = joint.friction
  const against = againstAt(scenario, id, joint, depth)
  const contact = gripped(contactOf(ram, against), id === 'sliding', hasJoint(scenario, depth))
  const slow = { label, speed: 0, contact }
  const travelAt = (effort: number) => ram.gap + depth + effort / ram.stiffness
  if (id === 'sliding') {
    const speed = speedAt(scenario, seatDepth(scenario), depth)
    const effort = slidingAt(scenario, joint, depth, speed).level + coneAt(joint, depth)
    return { label, force: effort, travel: travelAt(effort), speed, room: 0, contact }
  }
  // Bristles may swing from half of their level to where they begin to give way; they bear their share of every swing.
  const bears = hasJoint(scenario, depth) ? stiffness / against.stiffness : 0
  const swing = bears > 0 ? ((ELASTIC - BENT) * coulomb) / bears : Number.POSITIVE_INFINITY
  if (shoulder && id !== 'resting') {
    const bent = BENT * Math.min(coulomb, force)
    const press = (force - bent - coneAt(joint, depth)) / pressIn(scenario).bore.shoulder!.stiffness
    return { ...slow, force, travel: travelAt(force) + Math.max(0, press), room: Math.min(ROOM * force, swing) }
  }
  const effort = BENT * coulomb + coneAt(joint, depth)
  return { ...slow, force: effort, travel: travelAt(effort), room: Math.min(ROOM * effort, swing) }
}

/** Depth of the bushing [m] and force of its bristles [N] at a point in contact, at rest. */
function stands(scenario: Scenario, { force, travel }: WorkingPoint) {
  const { ram } = pressIn(scenario)
  const depth = travel - ram.gap - force / ram.stiffness
  const joint = engaged(scenario, depth)
  const pressed = Math.max(0, depth - shoulderDepth(scenario))
  const shoulder = pressed > 0 ? pressed * pressIn(scenario).bore.shoulder!.stiffness : 0
  return { depth, bent: force - coneAt(joint, depth) - shoulder }
}

/** What bushing and punch meet for each metre of their own way, and for each m/s. */
interface Against {
  stiffness: number
  damping: number
}

/** Slope of a function of the depth, over a way that is short beside all that happens on it. */
const slopeAt = (value: (depth: number) => number, depth: number) => {
  const step = 1e-5 * depth
  return (value(depth + step) - value(depth - step)) / (2 * step)
}

function againstAt(scenario: Scenario, id: WorkingPointId, joint: Joint, depth: number): Against {
  const { bushing, bore } = pressIn(scenario)
  const { stiffness } = joint.friction
  const cone = slopeAt((at) => coneAt(joint, at), depth)
  if (id === 'sliding') return { stiffness: cone + slopeAt((at) => levelAt(scenario, at), depth), damping: 0 }
  const bristles = hasJoint(scenario, depth) ? stiffness : 0
  const face = id === 'resting' ? 0 : (bore.shoulder?.stiffness ?? 0)
  const damper = (spring: number) => Math.sqrt(spring * bushing.mass)
  return { stiffness: cone + bristles + face, damping: damper(bristles) + damper(face) }
}

/** Frame and ram in series with it. */
function contactOf(ram: Against, { stiffness: bed, damping }: Against): Contact {
  const stiffness = (ram.stiffness * bed) / (ram.stiffness + bed)
  const share = stiffness / ram.stiffness
  return {
    stiffness,
    damping: damping * (1 - share) ** 2 + ram.damping * share ** 2,
    slow: stiffness,
    against: stiffness,
  }
}

const gripped = (contact: Contact, slides: boolean, joins: boolean): Contact =>
  slides || joins ? { ...contact, grips: slides ? 'slides' : 'holds' } : contact

function pressPlant(scenario: Scenario, point: WorkingPoint): PlantModel {
  const { bushing, ram } = pressIn(scenario)
  const { id, contact, travel } = point
  if (!contact) return axisPlant(scenario.actuator, pressOutput(scenario), travel).model
  const slides = id === 'sliding'
  const states = slides ? [...CARRIED, 'bristle' as const] : CARRIED
  const axis = axisPlant(scenario.actuator, pressOutput(scenario), travel, states)
  const carried = { mass: bushing.mass, stiffness: ram.stiffness, damping: ram.damping }
  const depth = slides ? seatDepth(scenario) / 2 : stands(scenario, point).depth
  const joint = engaged(scenario, depth)
  if (slides) {
    const held = { part: slopeAt((at) => coneAt(joint, at), depth) }
    return carriedPlant(axis, { ...carried, held, slides: slidingAt(scenario, joint, depth, point.speed) })
  }
  const { stiffness, damping } = againstAt(scenario, id, joint, depth)
  return carriedPlant(axis, { ...carried, held: { part: stiffness, partSpeed: damping } })
}

/** Friction over which the bushing slides at a depth with a speed: Stribeck's curve and what the way adds. */
function slidingAt(scenario: Scenario, joint: Joint, depth: number, speed: number): Sliding {
  const { friction } = joint
  const { stiffness, mass, stribeck } = friction
  const over = 1 + speed * speed * stribeck
  const level = (at: number) => {
    const { coulomb, rise } = engaged(scenario, at).friction
    return coulomb + rise / over
  }
  const grows = slopeAt(level, depth)
  joint.engage(depth)
  const follows: Weights = { part: grows, partSpeed: (-2 * friction.rise * speed * stribeck) / (over * over) }
  return { level: level(depth), stiffness, lead: Math.sqrt(mass / stiffness), speed, follows, grows }
}
