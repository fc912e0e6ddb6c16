/**
 * The loops of the gauge roll's tension, linear about a web that stands and about one that runs at the line's highest speed: the cascade of
 * the drive on an axis whose output stretches a span. With u the stretch of the span and q = 1 − u/L, u̇ = q·R·ω − (v/q)·u/L about its
 * place, and T = E·A·(u/(L − u) + τ·u̇/L); own linearisation of the law in `job/web/load.ts`. At the start of the run, where the roll is as
 * large as the drive reckons; dry friction, dead band and limits are not seen.
 */
import { topSpeed, turnToTaut, webOutput, webStiffness } from '../job/web/fill.ts'
import { webIn } from '../job/web/scenario.ts'
import type { Scenario } from '../scenario/index.ts'
import { Cascade } from './cascade.ts'
import { examine } from './examine.ts'
import type { Margins } from './margins.ts'
import { axisPlant, type PlantModel } from './plant.ts'
import type { Stability } from './stability.ts'
import type { WorkingPoint } from './working-point.ts'

export interface WebLoop {
  loop: 'velocity' | 'force'
  at: 'standing' | 'running'
  /** Speed of the line there [m/s]; sample period of the loop [s]. */
  speed: number
  period: number
  stability: Stability
  crossover: number | null
  /** Null for a loop that is not stable. */
  margins: Margins | null
}

/** Both loops at both points; a line that never runs has one. Throws a RangeError for a model that is not finite. */
export function webLoops(scenario: Scenario): WebLoop[] {
  const top = topSpeed(scenario)
  const points = [{ at: 'standing', speed: 0 } as const, ...(top > 0 ? [{ at: 'running', speed: top } as const] : [])]
  return points.flatMap(({ at, speed }) => {
    const cascade = new Cascade(scenario, pointOf(scenario), webPlant(scenario, speed))
    return (['velocity', 'force'] as const).map((loop): WebLoop => {
      const { period, stability, margins } = examine(cascade, loop)
      const stable = stability === 'stable'
      return { loop, at, speed, period, stability, crossover: margins.crossover, margins: stable ? margins : null }
    })
  })
}

/** Stretch of the span under the target [m], and share of a length there that is web without pull. */
function stretched(scenario: Scenario) {
  const { length } = webIn(scenario).span
  const strain = scenario.strategies.sensedForce.target / webStiffness(scenario)
  const stretch = (length * strain) / (1 + strain)
  return { stretch, relaxed: 1 - stretch / length }
}

/** The span by its own spring, as the cascade asks for one: that there is work to feel. */
function pointOf(scenario: Scenario): WorkingPoint {
  const { span, roll } = webIn(scenario)
  const stiffness = (webStiffness(scenario) / span.length) * roll.radius
  const force = scenario.strategies.sensedForce.target
  const contact = { stiffness, damping: 0, part: stiffness, pad: stiffness, slow: stiffness }
  return { id: 'nominal', label: 'Web', force, travel: turnToTaut(scenario), contact }
}

/** `jaw` is the stretch in turns of the roll, without pull. */
export function webPlant(scenario: Scenario, speed: number): PlantModel {
  const { span, web, roll, idlers } = webIn(scenario)
  const names: PlantModel['names'] = ['current', 'speed', 'stretch', 'jawSpeed', 'sampled', 'jaw']
  const { model, add } = axisPlant(scenario.actuator, webOutput(scenario), turnToTaut(scenario), names)
  const { stretch, relaxed } = stretched(scenario)
  const stiffness = webStiffness(scenario)
  const leaves = speed / (1 + span.entryTension / stiffness) / relaxed / span.length
  const perTurn = roll.radius * relaxed
  const spring = (stiffness * span.length * perTurn) / (span.length - stretch) ** 2
  const damper = (stiffness * web.damping * perTurn) / span.length
  const tension = { jaw: spring - damper * leaves, jawSpeed: damper }
  add('jaw', { jaw: -leaves })
  add(
    'jawSpeed',
    { jaw: tension.jaw, jawSpeed: tension.jawSpeed + idlers.viscous * roll.radius },
    -roll.radius / model.jawMass,
  )
  return { ...model, nearForce: tension }
}
