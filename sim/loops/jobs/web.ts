/**
 * A web to the loops: slack, standing, and running at the line's highest speed. With u the stretch of the span and q = 1 − u/L,
 * u̇ = q·R·ω − (v/q)·u/L about its place, and T = E·A·(u/(L − u) + τ·u̇/L); own linearisation of the law in `job/web/load.ts`. At the start
 * of the run, where the roll is as large as the drive reckons; dry friction of the idlers, dead band and limits are not seen.
 */
import { LINE_PHASE } from '../../control/line.ts'
import { numbers } from '../../core/native.ts'
import { topSpeed, turnToTaut, webOutput, webStiffness } from '../../job/web/fill.ts'
import type { WebLoad } from '../../job/web/load.ts'
import { webIn } from '../../job/web/scenario.ts'
import type { Scenario } from '../../scenario/index.ts'
import { axisPlant, type PlantModel } from '../axis-plant.ts'
import type { JobLoops, WorkBound, WorkingPoint, WorkingPointId } from './job.ts'

const LABELS: Partial<Record<WorkingPointId, string>> = {
  free: 'Slack web',
  softest: 'Softest web, standing',
  nominal: 'Nominal web, standing',
  stiffest: 'Stiffest web, standing',
  running: 'Nominal web, running',
}

/** Share of the tension by which it may swing. */
const ROOM = 0.4
/** A web that is slack all through a trial [m]. */
const SLACK = 1000

export const webLoops: JobLoops<WebLoad> = {
  points(scenario) {
    const standing: WorkingPointId[] = ['free', 'softest', 'nominal', 'stiffest']
    return topSpeed(scenario) > 0 ? [...standing, 'running'] : standing
  },
  stiffened(scenario, factor) {
    const { web } = webIn(scenario)
    const more = { web: { ...web, modulus: web.modulus * factor } }
    return { ...scenario, ...more }
  },
  point: webPoint,
  plant: webPlant,
  limit(scenario, { force }) {
    const { breakTension } = webIn(scenario).web
    return breakTension !== undefined && force >= breakTension ? { kind: 'tears', force: breakTension } : null
  },
  pull(scenario, { force, speed }) {
    const { roll, idlers } = webIn(scenario)
    return (force + idlers.viscous * speed * roll.radius) * roll.radius
  },
  lineSpeed: (scenario, { id }) => (id === 'running' ? topSpeed(scenario) / webIn(scenario).roll.radius : 0),
  setDown(load, scenario, { id, force }, follower) {
    load.state.drawn = id === 'free' ? -SLACK : tautAt(scenario, force).stretch
    // A round roll that does not grow: both would stir the tension whatever a loop does.
    load.runout = 0
    load.lineRunout = 0
    load.growth = 0
    follower.growth = 0
    const speed = id === 'running' ? topSpeed(scenario) : 0
    for (const line of [load.line, follower.line]) {
      line.phases = numbers(LINE_PHASE)
      line.phases.set([0, 0, speed, 0, 0])
      line.count = 1
    }
    load.state.fed = speed / (1 + load.entry)
  },
  met(load, { contact }) {
    if (!contact) return []
    const bounds: WorkBound[] = load.state.tension === 0 ? ['contact'] : []
    return Number.isNaN(load.state.torn) ? bounds : [...bounds, 'part']
  },
  calm(scenario) {
    const { idlers } = webIn(scenario)
    const more = { idlers: { ...idlers, coulomb: 0, breakaway: 0 } }
    return { ...scenario, ...more }
  },
}

/** Stretch of the span under a tension [m], and share of a length there that is web without pull. */
function tautAt(scenario: Scenario, force: number) {
  const { length } = webIn(scenario).span
  const strain = force / webStiffness(scenario)
  const stretch = (length * strain) / (1 + strain)
  return { stretch, relaxed: 1 - stretch / length }
}

function webPoint(scenario: Scenario, id: WorkingPointId, force: number): Omit<WorkingPoint, 'id' | 'factor'> {
  const label = LABELS[id]!
  const { roll } = webIn(scenario)
  const taut = turnToTaut(scenario)
  if (id === 'free') return { label, force: 0, travel: taut / 2, speed: 0, room: 0, contact: null }
  const { spring, damper, leaves, turns } = spanAt(scenario, id, force)
  return {
    label,
    force,
    travel: taut + tautAt(scenario, force).stretch / roll.radius,
    speed: turns,
    room: ROOM * force,
    contact: {
      stiffness: spring,
      damping: damper,
      slow: leaves > 0 ? 0 : spring,
      against: spring * roll.radius,
      ...(leaves > 0 && { forgets: 1 / leaves }),
    },
  }
}

/**
 * The span at a point: tension for each radian of stretch [N/rad] and for each rad/s of its growth, the share of the stretch that leaves
 * with the web [1/s], and the speed of the roll there [rad/s].
 */
function spanAt(scenario: Scenario, id: WorkingPointId, force: number) {
  const { span, web, roll } = webIn(scenario)
  const { stretch, relaxed } = tautAt(scenario, force)
  const stiffness = webStiffness(scenario)
  const fed = id === 'running' ? topSpeed(scenario) / (1 + span.entryTension / stiffness) : 0
  const perTurn = roll.radius * relaxed
  return {
    spring: (stiffness * span.length * perTurn) / (span.length - stretch) ** 2,
    damper: (stiffness * web.damping * perTurn) / span.length,
    leaves: fed / relaxed / span.length,
    turns: fed / perTurn,
  }
}

/** `part` is the stretch in turns of the roll, without pull. */
function webPlant(scenario: Scenario, { id, force, travel, contact }: WorkingPoint): PlantModel {
  const { roll, idlers } = webIn(scenario)
  if (!contact) return axisPlant(scenario.actuator, webOutput(scenario), travel).model
  const { model, add } = axisPlant(scenario.actuator, webOutput(scenario), travel, ['part'])
  const { spring, damper, leaves } = spanAt(scenario, id, force)
  const tension = { part: spring - damper * leaves, jawSpeed: damper }
  add('part', { jawSpeed: 1, part: -leaves })
  add(
    'jawSpeed',
    { part: tension.part, jawSpeed: tension.jawSpeed + idlers.viscous * roll.radius },
    -roll.radius / model.jawMass,
  )
  return { ...model, nearForce: tension, leaks: leaves > 0 }
}
