/** Where the axis is looked at: in free air, or in contact with the softest, the nominal and the stiffest part. */

import { lawOf } from '../job/grip/contact/laws.ts'
import { contactsOf, travelToContact } from '../job/grip/geometry.ts'
import type { Scenario } from '../scenario/index.ts'

export type WorkingPointId = 'free' | 'softest' | 'nominal' | 'stiffest'

/** One contact, linear about its working force. */
export interface Contact {
  /** Pad and half the part in series, tangent at the working force [N/m of squeeze]. */
  stiffness: number
  /** Hunt–Crossley damping at that force [N·s/m]. */
  damping: number
  /** The half part alone and the pad alone [N/m]. */
  part: number
  pad: number
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

export const WORKING_POINTS: WorkingPointId[] = ['free', 'softest', 'nominal', 'stiffest']

const LABELS: Record<WorkingPointId, string> = {
  free: 'Free air',
  softest: 'Softest part',
  nominal: 'Nominal part',
  stiffest: 'Stiffest part',
}

/** Stiffness of a working point's part over that of the nominal one. */
export const stiffnessFactor = (id: WorkingPointId, spread = STIFFNESS_SPREAD) =>
  id === 'softest' ? 1 - spread : id === 'stiffest' ? 1 + spread : 1

/** Throws a RangeError for a spread outside 0 … 0.99 or a force that is not above 0. */
export function workingPoint(scenario: Scenario, id: WorkingPointId, options: WorkingPointOptions = {}): WorkingPoint {
  const { spread = STIFFNESS_SPREAD, force = scenario.strategies.sensedForce.target } = options
  if (!(spread >= 0 && spread <= 0.99)) throw new RangeError(`stiffness spread: given ${spread}, allowed 0 to 0.99`)
  if (!(force > 0 && Number.isFinite(force))) throw new RangeError(`working force: given ${force} N, allowed above 0 N`)
  const travel = travelToContact(scenario)
  if (id === 'free') return { id, label: LABELS[id], force: 0, travel: travel / 2, contact: null }
  const stiffness = scenario.part.stiffness * stiffnessFactor(id, spread)
  const squeeze = lawOf(scenario.part.exponent).inverse(force / stiffness) / 2 + force / scenario.jaws.padStiffness
  // Against an anvil the jaw also follows the part, which sinks into the far contact.
  const sunk = contactsOf(scenario) === 2 ? 0 : squeeze
  return {
    id,
    label: LABELS[id],
    force,
    travel: travel + squeeze + sunk,
    contact: contactAt(scenario, stiffness, force),
  }
}

/** A part of `stiffness` K pressed with `force` [N], as Side computes it: F = K·f(2s)·(1 + 2λ·ṡ), pad in series. */
function contactAt({ part, jaws }: Scenario, stiffness: number, force: number): Contact {
  const law = lawOf(part.exponent)
  const half = 2 * stiffness * law.slope(law.inverse(force / stiffness))
  const pad = jaws.padStiffness
  return {
    stiffness: (half * pad) / (half + pad),
    damping: (2 * part.damping * force * pad) / (half + pad),
    part: half,
    pad,
  }
}

/** Jaw stiffness against both contacts of a mirrored pair, or against the part on its anvil [N/m of jaw travel]. */
export function jawStiffness(scenario: Scenario, contact: Contact): number {
  return contactsOf(scenario) === 2 ? 2 * contact.stiffness : contact.stiffness / 2
}
