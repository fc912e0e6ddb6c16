/**
 * Where the axis is looked at: in free air, or in contact with the softest, the nominal and the stiffest part; with a rounded part
 * that relaxes also with the stiffest one after it has relaxed, squeezed further by then and so stiffer to the touch.
 */

import { lawOf } from '../job/grip/contact/laws.ts'
import { contactsOf, travelToContact } from '../job/grip/geometry.ts'
import { inSeries, type Springs, springsAt } from '../job/grip/statics.ts'
import type { Scenario } from '../scenario/index.ts'

export type WorkingPointId = 'free' | 'softest' | 'nominal' | 'stiffest' | 'relaxed'

/** One contact, linear about its working force. */
export interface Contact {
  /** Pad and half the part in series, tangent at the working force [N/m of squeeze]. */
  stiffness: number
  /** Hunt–Crossley damping at that force [N·s/m]. */
  damping: number
  /** The half part alone and the pad alone [N/m]. */
  part: number
  pad: number
  /** What slow changes meet, once the part has given way to them: as `stiffness`, with the share of the part that does not relax. */
  slow: number
}

export interface WorkingPoint {
  id: WorkingPointId
  label: string
  /** Force at one contact [N]; 0 in free air. */
  force: number
  /** Travel of the jaw [m]. */
  travel: number
  contact: Contact | null
}

export interface WorkingPointOptions {
  /** Share by which the part's stiffness varies about the nominal one, 0 … 0.99. */
  spread?: number | undefined
  /** Working force at one contact [N]; the target of the sensed-force strategy if left out. */
  force?: number | undefined
}

/** Common practice for a part whose spread has not been measured, no source. */
export const STIFFNESS_SPREAD = 0.3

/** With a part that is fresh. */
export const WORKING_POINTS: WorkingPointId[] = ['free', 'softest', 'nominal', 'stiffest']

/** All that tell a difference: under a proportional law a relaxed part is as stiff as a fresh one. */
export const workingPointsOf = ({ part }: Scenario): WorkingPointId[] =>
  part.relaxation.fraction > 0 && !lawOf(part.exponent).proportional() ? [...WORKING_POINTS, 'relaxed'] : WORKING_POINTS

const LABELS: Record<WorkingPointId, string> = {
  free: 'Free air',
  softest: 'Softest part',
  nominal: 'Nominal part',
  stiffest: 'Stiffest part',
  relaxed: 'Stiffest part, relaxed',
}

/** Stiffness of a working point's part over that of the nominal one. */
export const stiffnessFactor = (id: WorkingPointId, spread = STIFFNESS_SPREAD) =>
  id === 'softest' ? 1 - spread : id === 'stiffest' || id === 'relaxed' ? 1 + spread : 1

/** Throws a RangeError for a spread outside 0 … 0.99 or a force that is not above 0. */
export function workingPoint(scenario: Scenario, id: WorkingPointId, options: WorkingPointOptions = {}): WorkingPoint {
  const { spread = STIFFNESS_SPREAD, force = scenario.strategies.sensedForce.target } = options
  if (!(spread >= 0 && spread <= 0.99)) throw new RangeError(`stiffness spread: given ${spread}, allowed 0 to 0.99`)
  if (!(force > 0 && Number.isFinite(force))) throw new RangeError(`working force: given ${force} N, allowed above 0 N`)
  const travel = travelToContact(scenario)
  if (id === 'free') return { id, label: LABELS[id], force: 0, travel: travel / 2, contact: null }
  const stiffness = scenario.part.stiffness * stiffnessFactor(id, spread)
  // A relaxed part bears the force with what has not faded: it is flattened as a fresh one by so much more force.
  const elastic = id === 'relaxed' ? force / (1 - scenario.part.relaxation.fraction) : force
  const springs = springsAt({ ...scenario, part: { ...scenario.part, stiffness } }, force, elastic)
  // Against an anvil the jaw also follows the part, which sinks into the far contact.
  const sunk = contactsOf(scenario) === 2 ? 0 : springs.squeeze
  return {
    id,
    label: LABELS[id],
    force,
    travel: travel + springs.squeeze + sunk,
    contact: contactAt(scenario, springs, force),
  }
}

/** The tangent of F = K·f(2s)·(1 + 2λ·ṡ), s the squeeze of the half part, with the pad in series, at `force` [N]. */
function contactAt(
  { part: { damping, relaxation } }: Scenario,
  { part, pad, stiffness }: Springs,
  force: number,
): Contact {
  return {
    stiffness,
    damping: (2 * damping * force * pad) / (part + pad),
    part,
    pad,
    slow: inSeries(part * (1 - relaxation.fraction), pad),
  }
}
