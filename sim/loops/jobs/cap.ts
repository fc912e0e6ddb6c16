/**
 * A closure to the loops. On the way it hangs in its chuck alone: the torque of the free thread is dry friction, which does not count.
 * On the liner it turns on, against the whole torque that preload asks for, or stands, held by bristles that are elastic and by what the
 * liner's spring turns it back with through the lead. A liner's spring is straight, so one that has crept answers as a fresh one does.
 * Own linearisation of `job/cap/load.ts` and `job/cap/thread.ts`; not seen: jams, stripping, friction that gives way.
 */
import { ELASTIC } from '../../axis/friction.ts'
import { capOutput, perNewton, seatAngle } from '../../job/cap/fill.ts'
import type { CapLoad } from '../../job/cap/load.ts'
import { capIn } from '../../job/cap/scenario.ts'
import type { Scenario } from '../../scenario/index.ts'
import { axisPlant, type PlantModel, type PlantState, type Weights } from '../axis-plant.ts'
import { CARRIED, carriedPlant, LOOSE, type Sliding } from './carried.ts'
import type { Contact, JobLoops, WorkBound, WorkingPoint, WorkingPointId } from './job.ts'

const LABELS: Partial<Record<WorkingPointId, string>> = {
  free: 'Before the liner',
  sliding: 'Turning on the liner',
  softest: 'At rest on the liner, softest',
  nominal: 'At rest on the liner',
  stiffest: 'At rest on the liner, stiffest',
}

/** Share of the level at which bristles stand in a closure at rest, and share of the torque by which it may swing. */
const BENT = 0.5
const ROOM = 0.4

/** Farther than any thread [rad]. */
const NEVER = 1e9

export const capLoops: JobLoops<CapLoad> = {
  points: () => ['free', 'sliding', 'softest', 'nominal', 'stiffest'],
  stiffened(scenario, factor) {
    const { liner, chuck, closure } = capIn(scenario)
    const more = {
      liner: { ...liner, stiffness: liner.stiffness * factor },
      chuck: { ...chuck, stiffness: chuck.stiffness * factor },
      closure: { ...closure, stiffness: closure.stiffness * factor },
    }
    return { ...scenario, ...more }
  },
  point: capPoint,
  plant: capPlant,
  limit(scenario, { force }) {
    const { stripTorque } = capIn(scenario).closure
    return stripTorque !== undefined && force >= stripTorque ? { kind: 'strips', force: stripTorque } : null
  },
  pull: (_, { force }) => force,
  setDown(load, scenario, point) {
    const { thread } = load
    const angle = point.travel - point.force / load.stiffness
    load.state.angle = angle
    if (!point.contact) {
      thread.start = NEVER
      return
    }
    const { preload, bent } = stands(scenario, point.force)
    thread.state.squeeze = preload / thread.stiffness
    thread.state.creeping = thread.relaxing * preload
    thread.state.preload = preload
    // The liner as squeezed as that, at the angle where the closure stands.
    thread.seat = angle - preload / (thread.stiffness * thread.climb)
    thread.friction.state.bristle = bent / thread.friction.stiffness
  },
  met(load, { contact }) {
    if (!contact) return []
    const { friction } = load.thread
    const most = ELASTIC * (Math.min(friction.coulomb, friction.coulombBack) + friction.rise)
    const bounds: WorkBound[] = friction.stiffness * Math.abs(friction.state.bristle) > most ? ['slides'] : []
    return Number.isNaN(load.state.over) && Number.isNaN(load.state.stripTime) ? bounds : [...bounds, 'part']
  },
  calm: (scenario) => scenario,
}

/** Top load where the closure meets its liner [N], and what it loses for each radian on [N/rad]. */
function topAt(scenario: Scenario) {
  const { chuck, closure } = capIn(scenario)
  const { climb } = perNewton(closure)
  const top = Math.max(0, chuck.topLoad - chuck.topRate * climb * closure.engagement)
  return { top, fades: top > 0 ? chuck.topRate * climb : 0 }
}

/** Friction of a closure that turns on under a preload [N·m]. */
function levelOf(scenario: Scenario, preload: number): number {
  const { closure } = capIn(scenario)
  const { on, off, face } = perNewton(closure)
  const load = preload - topAt(scenario).top
  return closure.runDown + face * preload + (load > 0 ? on * load : -off * load)
}

/** Preload [N] and torque of the bristles [N·m] of a closure that stands under a torque, its bristles half bent. */
function stands(scenario: Scenario, torque: number) {
  const preload = preloadWhere(scenario, torque, BENT)
  return { preload, bent: BENT * levelOf(scenario, preload) }
}

/** Preload at which a torque is that of the lossless thread and `share` of its friction [N], as near as the least preload, 0, comes. */
function preloadWhere(scenario: Scenario, torque: number, share: number): number {
  const { climb } = perNewton(capIn(scenario).closure)
  const { top } = topAt(scenario)
  const asks = (preload: number) => climb * (preload - top) + share * levelOf(scenario, preload)
  let [low, high] = [0, 1]
  while (asks(high) < torque) high *= 2
  for (let n = 0; n < 80; n++) {
    const middle = (low + high) / 2
    if (asks(middle) < torque) low = middle
    else high = middle
  }
  return high
}

/** What the closure meets at rest for each radian of its own way: bristles and, through the lead, liner and fading top load. */
function againstAtRest(scenario: Scenario) {
  const { closure, liner } = capIn(scenario)
  const { climb } = perNewton(closure)
  const spring = climb * (liner.stiffness * climb + topAt(scenario).fades)
  return { stiffness: closure.stiffness + spring, damping: Math.sqrt(closure.stiffness * closure.inertia) }
}

/** Level of the friction of a closure that turns on under a preload [N·m] with a speed [rad/s], and what it follows. */
function slidingAt(scenario: Scenario, preload: number, speed: number): Sliding {
  const { closure, liner } = capIn(scenario)
  const { climb, on, off, face } = perNewton(closure)
  const { top, fades } = topAt(scenario)
  const turned = levelOf(scenario, preload)
  const back = closure.runDown + face * preload + (preload > top ? off : -on) * (preload - top)
  const rise = (closure.restFriction - 1) * Math.min(turned, back)
  const stribeck = 1 / (closure.slideSpeed * closure.slideSpeed)
  const over = 1 + speed * speed * stribeck
  const perPreload = face + (preload > top ? on : -off)
  const perTop = preload > top ? on : -off
  const squeezed = liner.stiffness * climb * perPreload
  const grows = squeezed + perTop * fades
  const follows: Weights = {
    part: grows,
    fade: -liner.relaxing * squeezed,
    partSpeed: (-2 * rise * speed * stribeck) / (over * over),
  }
  const { stiffness, inertia } = closure
  return { level: turned + rise / over, stiffness, lead: Math.sqrt(inertia / stiffness), speed, follows, grows }
}

function capPoint(scenario: Scenario, id: WorkingPointId, force: number): Omit<WorkingPoint, 'id' | 'factor'> {
  const { chuck, liner, closure } = capIn(scenario)
  const { climb } = perNewton(closure)
  const label = LABELS[id]!
  const seat = seatAngle(scenario)
  if (id === 'free') return { label, force: 0, travel: seat / 2, speed: 0, room: 0, contact: null }
  const slides = id === 'sliding'
  const { approach } = scenario
  const speed = approach.creepFrom > 0 ? Math.min(approach.creepSpeed, approach.speed) : approach.speed
  const preload = preloadWhere(scenario, force, slides ? 1 : BENT)
  const rest = againstAtRest(scenario)
  const sliding = slides ? slidingAt(scenario, preload, speed) : null
  const bed = sliding ? { stiffness: sliding.grows + rest.stiffness - closure.stiffness, damping: 0 } : rest
  const swing = ((ELASTIC - BENT) * levelOf(scenario, preload) * rest.stiffness) / closure.stiffness
  return {
    label,
    force,
    travel: seat + preload / (liner.stiffness * climb) + force / chuck.stiffness,
    speed: slides ? speed : 0,
    room: slides ? 0 : Math.min(ROOM * force, swing),
    contact: {
      ...contactOf(scenario, bed, creepOf(scenario) - (sliding?.follows.fade ?? 0)),
      grips: slides ? 'slides' : 'holds',
    },
  }
}

/** Torque on the thread for each radian by which the liner has crept [N·m/rad]. */
function creepOf(scenario: Scenario): number {
  const { closure, liner } = capIn(scenario)
  return liner.relaxing * liner.stiffness * perNewton(closure).climb ** 2
}

/** The chuck's give in series with what the closure meets, and with what is left of that once the liner has crept. */
function contactOf(scenario: Scenario, bed: { stiffness: number; damping: number }, crept: number): Contact {
  const { chuck } = capIn(scenario)
  const series = (stiffness: number) => (chuck.stiffness * stiffness) / (chuck.stiffness + stiffness)
  const stiffness = series(bed.stiffness)
  const share = stiffness / chuck.stiffness
  return {
    stiffness,
    damping: bed.damping * (1 - share) ** 2 + chuck.damping * share ** 2,
    slow: series(bed.stiffness - crept),
    against: stiffness,
  }
}

function capPlant(scenario: Scenario, point: WorkingPoint): PlantModel {
  const { closure, chuck, liner } = capIn(scenario)
  const own = { mass: closure.inertia, stiffness: chuck.stiffness, damping: chuck.damping }
  const output = capOutput(scenario)
  if (!point.contact) {
    return carriedPlant(axisPlant(scenario.actuator, output, point.travel, LOOSE), { ...own, held: {} })
  }
  const slides = point.id === 'sliding'
  const creeps: PlantState[] = liner.relaxing > 0 ? ['fade'] : []
  const states: PlantState[] = [...CARRIED, ...creeps, ...(slides ? ['bristle' as const] : [])]
  const axis = axisPlant(scenario.actuator, output, point.travel, states)
  if (creeps.length > 0) axis.add('fade', { part: 1, fade: -1 }, 1 / liner.relaxationTime)
  const { stiffness, damping } = againstAtRest(scenario)
  const fade: Weights = creeps.length > 0 ? { fade: -creepOf(scenario) } : {}
  if (!slides) return carriedPlant(axis, { ...own, held: { part: stiffness, partSpeed: damping, ...fade } })
  const sliding = slidingAt(scenario, preloadWhere(scenario, point.force, 1), point.speed)
  if (creeps.length === 0) delete sliding.follows.fade
  return carriedPlant(axis, { ...own, held: { part: stiffness - closure.stiffness, ...fade }, slides: sliding })
}
